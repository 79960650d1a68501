// Written from schemas/*.schema.json by `npm run generate`. Change the schema, not this file.
import type { Quantity } from "../quantities";
import type { Link, Pair, Place, Written } from "./written";

/** One aircraft as it stands before the modification: weights, envelope, stations, electrical system, panels. File names end in .airframe.yaml. */
export interface AirframeRecord {
  readonly place: Place;
  /** Where the record stands: in-work while it has blanks, which then only warn. */
  readonly status?: Written<"in-work" | "in-use">;
  /** Which aircraft this is, and the basis it was certificated on. */
  readonly aircraft?: Aircraft;
  /** Where arms are measured from, in the words of the aircraft's data. Arms aft of it are positive. */
  readonly datum?: Written<string>;
  /** Basic empty weight and arm before the modification. */
  readonly empty?: EmptyStatement;
  /** Weight limits of the aircraft. */
  readonly limits?: WeightLimits;
  /** Mean aerodynamic chord, where the aircraft's data give it. */
  readonly mac?: Mac;
  /** Centre-of-gravity limits against weight, one for each category. */
  readonly envelopes?: readonly Envelope[];
  /** Places that carry load: seats, baggage, fuel. */
  readonly stations?: readonly Station[];
  /** Loadings that must stay legal after the modification. */
  readonly loadings?: readonly Loading[];
  /** Equipment in the basic empty weight that a modification may take out. */
  readonly equipment?: readonly Equipment[];
  /** The electrical system that the kit is connected to. */
  readonly electrical?: Electrical;
  /** Panels that may be cut. */
  readonly panels?: readonly Panel[];
  /** Modifications done to this aircraft, for what a kit requires or does not go with. */
  readonly modifications?: readonly Modification[];
  /** Pitch attitudes in which drains must run: parked, in flight. */
  readonly attitudes?: readonly Attitude[];
  /** Cabin and bays whose temperature matters: glazing, walls, what they hold. */
  readonly spaces?: readonly Space[];
  /** The maker's load factors for mounts, by place. They stand in place of the published ones. */
  readonly loadFactors?: readonly PlaceFactors[];
  /** Shelves, floors and bulkheads that equipment is mounted on. */
  readonly shelves?: readonly Shelf[];
  /** Room that nothing may enter: control runs, filler necks, doors, recovery-device paths, head room, servicing access. */
  readonly keepOuts?: readonly KeepOut[];
  /** Seats that controls have to be within reach of. */
  readonly seats?: readonly Seat[];
  /** The weighing that the empty weight comes from. Without an empty weight statement it is the starting point itself. */
  readonly weighing?: Weighing;
  /** Changes of the empty weight since the last weighing. */
  readonly history?: History;
  /** The crew without which the aircraft does not fly. */
  readonly crew?: Crew;
  /** Decides the minimum fuel of the adverse-loading check. */
  readonly powerplant?: Powerplant;
  /** Full oil, where the basis leaves it out of the empty weight. */
  readonly oil?: Oil;
  /** Fuel stations in the order in which they run empty. Left out: all at the same rate. */
  readonly burnOrder?: readonly Written<string>[];
}

/** Aircraft. */
export interface Aircraft {
  readonly place: Place;
  /** Maker of the airframe. */
  readonly maker?: Written<string>;
  /** Type as the type certificate names it. */
  readonly type?: Written<string>;
  /** Serial number of this one airframe. */
  readonly serial?: Written<string>;
  /** Decides which published rules apply. */
  readonly kind?: Written<"aeroplane" | "rotorcraft">;
  /** Basis of certification, from the type certificate data sheet. */
  readonly certificationBasis?: Written<"CAR 3" | "14 CFR 23 before Amdt 23-64" | "14 CFR 23 from Amdt 23-64" | "14 CFR 25" | "14 CFR 29">;
  /** Category, which decides the manoeuvre load factor. Left out: no manoeuvre load factor is computed. */
  readonly category?: Written<"normal" | "utility" | "acrobatic" | "commuter">;
}

/** Empty weight statement. */
export interface EmptyStatement {
  readonly place: Place;
  /** Basic empty weight. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Arm of the empty centre of gravity, from the datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where the empty centre of gravity stands to the side; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height of the empty centre of gravity. */
  readonly waterLine?: Written<Quantity<"length">>;
  /** What the empty weight includes. */
  readonly includes?: Written<string>;
  /** Date of the statement that this one supersedes. */
  readonly dated?: Written<string>;
}

/** Weight limits. */
export interface WeightLimits {
  readonly place: Place;
  /** Maximum ramp weight. */
  readonly ramp?: Written<Quantity<"mass">>;
  /** Maximum take-off weight. */
  readonly takeoff?: Written<Quantity<"mass">>;
  /** Maximum landing weight. */
  readonly landing?: Written<Quantity<"mass">>;
  /** Maximum zero-fuel weight. */
  readonly zeroFuel?: Written<Quantity<"mass">>;
  /** Fuel that start and taxi burn: a loading weighs so much more on the ramp. */
  readonly taxiFuel?: Written<Quantity<"mass">>;
}

/** Mean aerodynamic chord. */
export interface Mac {
  readonly place: Place;
  /** Arm of the chord's leading edge. */
  readonly leadingEdge?: Written<Quantity<"length">>;
  /** Length of the chord. */
  readonly length?: Written<Quantity<"length">>;
}

/** Envelope. */
export interface Envelope {
  readonly place: Place;
  /** Name of this envelope. */
  readonly id?: Written<string>;
  /** Forward limit: arm against weight, straight between the points. */
  readonly forward?: readonly LimitPoint[];
  /** Aft limit: arm against weight, straight between the points. */
  readonly aft?: readonly LimitPoint[];
  /** Maximum take-off weight in this category, where it is below the aircraft's. */
  readonly maximum?: Written<Quantity<"mass">>;
  /** Stations that carry nothing in this category. */
  readonly emptyStations?: readonly Written<string>[];
  /** Limits of the centre of gravity to the side, where the aircraft's data give them. */
  readonly lateral?: LateralLimits;
}

/** Limit point. */
export interface LimitPoint {
  readonly place: Place;
  /** Weight at this point of the limit. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Limit arm at this weight. */
  readonly arm?: Written<Quantity<"length">>;
  /** True when the data say 'at this weight or less': the arm holds below it too. */
  readonly orLess?: Written<boolean>;
}

/** Lateral limits. */
export interface LateralLimits {
  readonly place: Place;
  /** Limit to the left: a butt line, negative on the left. */
  readonly left?: Written<Quantity<"length">>;
  /** Limit to the right. */
  readonly right?: Written<Quantity<"length">>;
}

/** Station. */
export interface Station {
  readonly place: Place;
  /** Name of this station. */
  readonly id?: Written<string>;
  /** Its name in words, for findings and sheets. */
  readonly name?: Written<string>;
  /** What it carries. */
  readonly kind?: Written<"seat" | "baggage" | "fuel" | "ballast" | "other">;
  /** Arm of the load from the datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where the load stands to the side; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height of the load; for ballast, which counts in the empty weight. */
  readonly waterLine?: Written<Quantity<"length">>;
  /** Greatest weight allowed here. */
  readonly limit?: Written<Quantity<"mass">>;
  /** Usable volume of a tank. */
  readonly capacity?: Written<Quantity<"volume">>;
  /** Density of the fluid in a tank. */
  readonly density?: Written<Quantity<"density">>;
  /** How many persons sit here. */
  readonly seats?: Written<number>;
  /** Area of floor that carries the load. */
  readonly floorArea?: Written<Quantity<"area">>;
  /** Greatest load for each area of its floor. */
  readonly floorLimit?: Written<Quantity<"area-load">>;
  /** Length of its floor along the fuselage. */
  readonly floorLength?: Written<Quantity<"length">>;
  /** Greatest load for each length of its floor. */
  readonly runningLimit?: Written<Quantity<"line-load">>;
}

/** Loading. */
export interface Loading {
  readonly place: Place;
  /** Name of this loading. */
  readonly id?: Written<string>;
  /** Envelope that it must stay inside. */
  readonly envelope?: Written<string>;
  /** What is on board, by station. */
  readonly load?: readonly StationLoad[];
  /** Fuel burned between take-off and landing. */
  readonly tripFuel?: Written<Quantity<"mass">>;
}

/** Load at a station. */
export interface StationLoad {
  readonly place: Place;
  /** Station that carries it. */
  readonly station?: Written<string>;
  /** Weight of the load. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Volume of fluid, turned into weight by the station's density. */
  readonly volume?: Written<Quantity<"volume">>;
  /** Area that this load stands on, pallet counted. Left out: the station's floor. */
  readonly area?: Written<Quantity<"area">>;
  /** Length along the fuselage that this load stands on. Left out: the station's floor. */
  readonly length?: Written<Quantity<"length">>;
}

/** Equipment. */
export interface Equipment {
  readonly place: Place;
  /** Name of this item. */
  readonly id?: Written<string>;
  /** Part number or name. */
  readonly part?: Written<string>;
  /** Weight of the item. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Arm of the item from the datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Shelf or floor that it stands on. */
  readonly shelf?: Written<string>;
  /** Where its centre of gravity stands to the side, from the aircraft's centreline; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height of its centre of gravity, in the airframe's water lines; up is positive. */
  readonly waterLine?: Written<Quantity<"length">>;
  /** Mark of the equipment list: required, standard, optional or special. */
  readonly class?: Written<"required" | "standard" | "optional" | "special">;
  /** Item that it is required for, as belts are for a seat: taken out together with that, it is not missed. */
  readonly requiredWith?: Written<string>;
}

/** Electrical system. */
export interface Electrical {
  readonly place: Place;
  /** Nominal system voltage. */
  readonly nominal?: Written<Quantity<"voltage">>;
  /** True when placards of allowed load combinations, or means to watch the load, keep the pilot from overloading a source (AC 43.13-1B par. 11-35). */
  readonly monitored?: Written<boolean>;
  /** Sources: alternators, battery, ground power. */
  readonly sources?: readonly Source[];
  /** Buses that circuits are fed from. */
  readonly buses?: readonly Bus[];
  /** Main power wires and ties, from a source or a bus to a bus. */
  readonly feeders?: readonly Feeder[];
  /** Loads that are there before the modification, by phase. */
  readonly existingLoads?: readonly ExistingLoad[];
  /** Ground points that returns lead to. */
  readonly grounds?: readonly Ground[];
}

/** Source. */
export interface Source {
  readonly place: Place;
  /** Name of this source. */
  readonly id?: Written<string>;
  /** What it is. A generator counts as an alternator. */
  readonly kind?: Written<"alternator" | "battery" | "ground-power">;
  /** Bus that it feeds, when it feeds one directly. Left out when a feeder leads from it. */
  readonly bus?: Written<string>;
  /** Voltage that it holds: regulated, or a battery's at rest. */
  readonly voltage?: Written<Quantity<"voltage">>;
  /** Rated output, from its data plate. A battery's: the greatest current that it may give. */
  readonly rating?: Written<Quantity<"current">>;
  /** Internal resistance. Left out: none. */
  readonly resistance?: Written<Quantity<"resistance">>;
  /** Turns of an alternator for each turn of the engine. */
  readonly driveRatio?: Written<number>;
  /** An alternator's output against its own speed, rising, from its maker's data. Nothing is assumed where this is left out. */
  readonly output?: readonly OutputPoint[];
  /** Rated capacity of a battery. */
  readonly capacity?: Written<Quantity<"charge">>;
  /** How long a battery must feed the essential loads after the loss of every alternator. Left out: 30 min, or 60 min where a condition is above 25,000 ft. */
  readonly endurance?: Written<Quantity<"time">>;
  /** Whose figures these are. */
  readonly data?: Written<string>;
}

/** Output point. */
export interface OutputPoint {
  readonly place: Place;
  /** Speed of the alternator itself. */
  readonly speed?: Written<Quantity<"speed">>;
  /** Output at this speed. */
  readonly current?: Written<Quantity<"current">>;
}

/** Bus. */
export interface Bus {
  readonly place: Place;
  /** Name of this bus. */
  readonly id?: Written<string>;
  /** Where it is. */
  readonly location?: Written<string>;
}

/** Feeder. */
export interface Feeder {
  readonly place: Place;
  /** Name of this feeder. */
  readonly id?: Written<string>;
  /** Source or bus that it leads from. */
  readonly from?: Written<string>;
  /** Bus that it leads to. */
  readonly to?: Written<string>;
  /** Resistance of the whole feeder, contactors and shunts in it counted. */
  readonly resistance?: Written<Quantity<"resistance">>;
}

/** Existing load. */
export interface ExistingLoad {
  readonly place: Place;
  /** Name of this load. */
  readonly id?: Written<string>;
  /** Bus that feeds it. */
  readonly bus?: Written<string>;
  /** Current in each phase; a phase left out counts as none. */
  readonly currents?: PhaseCurrents;
  /** Decides how the 80 % rule counts it. Left out: other. */
  readonly use?: Written<"pitot-heat" | "landing-light" | "other">;
  /** True when it is needed for safe flight, and kept when a source is lost. */
  readonly essential?: Written<boolean>;
  /** Order in which it is shed when a source is lost, 1 first. Left out: it is kept. */
  readonly shed?: Written<number>;
}

/** Currents by phase. */
export interface PhaseCurrents {
  readonly place: Place;
  /** Current on ground power. */
  readonly groundPower?: Written<Quantity<"current">>;
  /** Current during the engine start. */
  readonly start?: Written<Quantity<"current">>;
  /** Current while taxiing at idle. */
  readonly taxi?: Written<Quantity<"current">>;
  /** Current at take-off and in the climb. */
  readonly takeOff?: Written<Quantity<"current">>;
  /** Current in cruise. */
  readonly cruise?: Written<Quantity<"current">>;
  /** Current in descent and landing. */
  readonly landing?: Written<Quantity<"current">>;
  /** Current after the loss of a source, loads shed. */
  readonly sourceFailed?: Written<Quantity<"current">>;
}

/** Ground point. */
export interface Ground {
  readonly place: Place;
  /** Name of this ground point. */
  readonly id?: Written<string>;
  /** Where it is. */
  readonly location?: Written<string>;
}

/** Panel. */
export interface Panel {
  readonly place: Place;
  /** Name of this panel. */
  readonly id?: Written<string>;
  /** Material and temper. */
  readonly material?: Written<string>;
  /** Sheet thickness. */
  readonly thickness?: Written<Quantity<"length">>;
  /** Outline of the panel, in its own x and y. */
  readonly outline?: Figure;
  /** Single fasteners through the panel. */
  readonly fasteners?: readonly Fastener[];
  /** Rows of fasteners, evenly spaced between two ends. */
  readonly fastenerRows?: readonly FastenerRow[];
  /** The maker's least distances and radii for openings in this panel. */
  readonly minimums?: PanelMinimums;
  /** What the structure behind the panel leaves open when the panel is off, in the panel's x and y. */
  readonly clearOpening?: Figure;
  /** How it is made. Left out: a single sheet. */
  readonly construction?: Written<"sheet" | "sandwich">;
  /** True where it carries loads of the airframe: an opening in it has to be reinforced. */
  readonly loadBearing?: Written<boolean>;
  /** True where it is part of a pressurised area: the circular's data do not apply there. */
  readonly pressurised?: Written<boolean>;
  /** Density of its material, for the weight of what is cut out. */
  readonly density?: Written<Quantity<"density">>;
  /** The load that it carries, from the maker's data or an analysis. */
  readonly load?: PanelLoad;
  /** Stiffeners on it, each a straight line. */
  readonly stiffeners?: readonly Stiffener[];
  /** Where it is in the aircraft: what is cut out of it and fastened onto it counts there. */
  readonly position?: PanelPosition;
  /** Where hands come in when it is off, and how far they reach. */
  readonly access?: PanelAccess;
}

/** An outline in the plane of a panel: circle, slot, rectangle or polygon, at any place and angle. */
export interface Figure {
  readonly place: Place;
  /** `circle` takes a diameter; `slot` (obround) a length over the round ends and a width; `rectangle` a width, a height and a corner-radius; `polygon` a list of points. */
  readonly shape?: Written<"circle" | "slot" | "rectangle" | "polygon">;
  /** Diameter of a circle. */
  readonly diameter?: Written<Quantity<"length">>;
  /** Overall length of a slot, along x before it is turned. */
  readonly length?: Written<Quantity<"length">>;
  /** Width of a slot (across it) or of a rectangle (along x before it is turned). */
  readonly width?: Written<Quantity<"length">>;
  /** Height of a rectangle, along y before it is turned. */
  readonly height?: Written<Quantity<"length">>;
  /** Radius of a rectangle's corners. */
  readonly cornerRadius?: Written<Quantity<"length">>;
  /** Corners of a polygon, in order around it, relative to `at`. */
  readonly points?: readonly Point[];
  /** Where the centre (polygon: the origin of its points) lies. Left out: x 0, y 0. */
  readonly at?: Point;
  /** Turn about `at`, counter-clockwise. Left out: 0 deg. */
  readonly angle?: Written<Quantity<"angle">>;
}

/** A point in the plane of the panel. */
export interface Point {
  readonly place: Place;
  /** Along the panel's x axis. */
  readonly x?: Written<Quantity<"length">>;
  /** Along the panel's y axis. */
  readonly y?: Written<Quantity<"length">>;
}

/** Fastener. */
export interface Fastener {
  readonly place: Place;
  /** Centre of the fastener. */
  readonly at?: Point;
  /** Shank diameter. */
  readonly diameter?: Written<Quantity<"length">>;
  /** Head style: it decides the edge distance. */
  readonly head?: Written<"protruding" | "countersunk">;
}

/** Fastener row. */
export interface FastenerRow {
  readonly place: Place;
  /** Centre of the first fastener. */
  readonly from?: Point;
  /** Centre of the last fastener. */
  readonly to?: Point;
  /** How many fasteners, both ends counted. */
  readonly count?: Written<number>;
  /** Shank diameter. */
  readonly diameter?: Written<Quantity<"length">>;
  /** Head style: it decides the edge distance. */
  readonly head?: Written<"protruding" | "countersunk">;
}

/** Panel minimums. */
export interface PanelMinimums {
  readonly place: Place;
  /** Least distance from an opening to the panel's edge. */
  readonly edge?: Written<Quantity<"length">>;
  /** Least distance between two openings. */
  readonly between?: Written<Quantity<"length">>;
  /** Least distance from an opening to a stiffener. */
  readonly stiffener?: Written<Quantity<"length">>;
  /** Least corner radius of an opening. */
  readonly cornerRadius?: Written<Quantity<"length">>;
  /** The document that gives these figures. */
  readonly data?: Written<string>;
}

/** Panel load. */
export interface PanelLoad {
  readonly place: Place;
  /** Direction of the load, from the panel's x axis. */
  readonly direction?: Written<Quantity<"angle">>;
  /** Force that runs through the whole width of the panel. */
  readonly force?: Written<Quantity<"force">>;
  /** Stress that the material may see at the edge of an opening. */
  readonly allowable?: Written<Quantity<"pressure">>;
  /** The document that gives these figures. */
  readonly data?: Written<string>;
}

/** Stiffener. */
export interface Stiffener {
  readonly place: Place;
  /** What it is called. */
  readonly name?: Written<string>;
  /** One end of its middle line. */
  readonly from?: Point;
  /** The other end. */
  readonly to?: Point;
  /** Width of what lies on the panel: its foot or its flange. */
  readonly width?: Written<Quantity<"length">>;
}

/** Position of a panel. */
export interface PanelPosition {
  readonly place: Place;
  /** Arm, from the airframe's datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** To the side, from the aircraft's centreline; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height, in the airframe's water lines; up is positive. */
  readonly waterLine?: Written<Quantity<"length">>;
}

/** Access by a panel. */
export interface PanelAccess {
  readonly place: Place;
  /** Middle of its clear opening, in the aircraft. */
  readonly at?: SpacePoint;
  /** How far from there work can be done, from the aircraft's data or by trying it. No published figure was found, so none is assumed. */
  readonly reach?: Written<Quantity<"length">>;
  /** The document that gives the reach. */
  readonly data?: Written<string>;
}

/** A point in the aircraft. */
export interface SpacePoint {
  readonly place: Place;
  /** Its arm, from the airframe's datum; aft is positive. */
  readonly arm?: Written<Quantity<"length">>;
  /** Its distance from the aircraft's centreline; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Its height, in the airframe's water lines; up is positive. */
  readonly waterLine?: Written<Quantity<"length">>;
}

/** Modification. */
export interface Modification {
  readonly place: Place;
  /** Its number, as a kit's eligibility names it. */
  readonly id?: Written<string>;
  /** What it is. */
  readonly title?: Written<string>;
  /** The data that it was done by. */
  readonly data?: Written<string>;
}

/** Attitude. */
export interface Attitude {
  readonly place: Place;
  /** Name of this attitude. */
  readonly name?: Written<string>;
  /** Pitch of the water lines; nose up is positive. */
  readonly pitch?: Written<Quantity<"angle">>;
}

/** Space. */
export interface Space {
  readonly place: Place;
  /** Name of this space. */
  readonly id?: Written<string>;
  /** Windows that the sun shines through. */
  readonly glazing?: readonly Glazing[];
  /** Sum of area times heat transfer coefficient (U x A) of all its walls, glazing counted. */
  readonly conductance?: Written<Quantity<"thermal-conductance">>;
  /** Heat that the air and all in it take up for each degree. */
  readonly thermalMass?: Written<Quantity<"heat-capacity">>;
  /** Whose figures these are. */
  readonly data?: Written<string>;
}

/** Glazing. */
export interface Glazing {
  readonly place: Place;
  /** Name of this window. */
  readonly id?: Written<string>;
  /** Area that the sun falls on. */
  readonly area?: Written<Quantity<"area">>;
  /** Solar heat gain coefficient (SHGC): share of the sun's power that gets in. */
  readonly solarGain?: Written<Quantity<"ratio">>;
}

/** Load factors of a place. */
export interface PlaceFactors {
  readonly place: Place;
  /** Where they hold. */
  readonly where?: Written<"occupant-compartment" | "aft-of-occupants" | "cargo-only" | "external">;
  /** Load factor forward. */
  readonly forward?: Written<Quantity<"load-factor">>;
  /** Load factor aft. */
  readonly aft?: Written<Quantity<"load-factor">>;
  /** Load factor to either side. */
  readonly side?: Written<Quantity<"load-factor">>;
  /** Load factor up. */
  readonly up?: Written<Quantity<"load-factor">>;
  /** Load factor down. */
  readonly down?: Written<Quantity<"load-factor">>;
  /** Whether they are limit or ultimate. Limit factors are multiplied by 1.5. */
  readonly stated?: Written<"limit" | "ultimate">;
  /** The document that gives them. */
  readonly data?: Written<string>;
}

/** Shelf, floor or bulkhead. */
export interface Shelf {
  readonly place: Place;
  /** Name of this shelf. */
  readonly id?: Written<string>;
  /** Where it is. */
  readonly location?: Written<string>;
  /** Material and temper of the sheet that fasteners go through. */
  readonly material?: Written<string>;
  /** Thickness of the sheet that fasteners go through. */
  readonly thickness?: Written<Quantity<"length">>;
  /** Ultimate bearing strength of the sheet, from the airframe's data. Left out: a figure for its material, from memory. */
  readonly bearingStrength?: Written<Quantity<"pressure">>;
  /** Greatest weight that may stand on it. */
  readonly loadLimit?: Written<Quantity<"mass">>;
  /** Greatest weight on an area of it. */
  readonly floorLoad?: Written<Quantity<"area-load">>;
  /** Weight that stands on it and is not in the equipment list. */
  readonly carried?: Written<Quantity<"mass">>;
  /** The document that gives its limits and strength. */
  readonly data?: Written<string>;
}

/** Keep-out volume. */
export interface KeepOut {
  readonly place: Place;
  /** Name of this room. */
  readonly id?: Written<string>;
  /** What it is kept free for. */
  readonly kind?: Written<"control-run" | "filler-neck" | "door" | "recovery-device" | "head-room" | "servicing-access" | "other">;
  /** Seat that it is the head room of. */
  readonly seat?: Written<string>;
  /** A box along the axes of the aircraft. */
  readonly box?: SpaceBox;
  /** Points of a line that room is kept around, in order. */
  readonly along?: readonly SpacePoint[];
  /** How far around the line: the radius of a cable's guard, of a tube, of a head. */
  readonly radius?: Written<Quantity<"length">>;
  /** Distance to be kept from it. */
  readonly clearance?: Written<Quantity<"length">>;
  /** The document that asks for this distance. */
  readonly data?: Written<string>;
}

/** Box in the aircraft. */
export interface SpaceBox {
  readonly place: Place;
  /** One corner. */
  readonly from?: SpacePoint;
  /** The corner opposite. */
  readonly to?: SpacePoint;
}

/** Seat. */
export interface Seat {
  readonly place: Place;
  /** Name of this seat. */
  readonly id?: Written<string>;
  /** Where the occupant's shoulder is, belted. */
  readonly shoulder?: SpacePoint;
  /** How far from there a control can be worked, belted, from the aircraft's data. No published figure was found, so none is assumed. */
  readonly reach?: Written<Quantity<"length">>;
  /** The document that gives the reach. */
  readonly data?: Written<string>;
}

/** Weighing. */
export interface Weighing {
  readonly place: Place;
  /** Date of the weighing. */
  readonly dated?: Written<string>;
  /** Arm of the jig point that scales are measured from, where they are. */
  readonly reference?: Written<Quantity<"length">>;
  /** What stood under each wheel or jack. */
  readonly scales?: readonly Scale[];
  /** Fluids and things that were on board, or missing, when it was weighed. */
  readonly items?: readonly WeighingItem[];
}

/** Scale. */
export interface Scale {
  readonly place: Place;
  /** Name of this scale. */
  readonly id?: Written<string>;
  /** What the scale read. How far it may be off, by its calibration, counts where no empty weight statement is recorded. */
  readonly reading?: Written<Quantity<"mass">>;
  /** Chocks, blocks and jacks that stood on it. Left out: none. */
  readonly tare?: Written<Quantity<"mass">>;
  /** Arm of the wheel's axle or the jack point, from the datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** In place of the arm: distance from the weighing's reference point; aft is positive. */
  readonly offset?: Written<Quantity<"length">>;
  /** Where the wheel or jack stands to the side; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
}

/** Item of a weighing. */
export interface WeighingItem {
  readonly place: Place;
  /** Name of this item. */
  readonly id?: Written<string>;
  /** Decides, by the certification basis, whether it belongs to the empty weight. */
  readonly what?: Written<"usable-fuel" | "unusable-fuel" | "drainable-oil" | "undrainable-oil" | "hydraulic-fluid" | "coolant" | "other-fluid" | "potable-water" | "injection-fluid" | "installed-equipment" | "fixed-ballast" | "foreign">;
  /** False when it was missing at the weighing. Left out: it was on board. */
  readonly onBoard?: Written<boolean>;
  /** Its weight. */
  readonly weight?: Written<Quantity<"mass">>;
  /** In place of the weight: volume of a fluid. */
  readonly volume?: Written<Quantity<"volume">>;
  /** Density of the fluid, as measured. */
  readonly density?: Written<Quantity<"density">>;
  /** Its arm, from the datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where it stands to the side; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
}

/** Change history. */
export interface History {
  readonly place: Place;
  /** Date of the last weighing. */
  readonly weighed?: Written<string>;
  /** Cumulative change from which on the aircraft's data ask for a new weighing. */
  readonly weightThreshold?: Written<Quantity<"mass">>;
  /** The same for the CG, in per cent of the mean aerodynamic chord. */
  readonly cgThreshold?: Written<Quantity<"ratio">>;
  /** Every change of the empty weight since then, the present statement's last. */
  readonly changes?: readonly PastChange[];
}

/** Past change. */
export interface PastChange {
  readonly place: Place;
  /** Date of the change. */
  readonly dated?: Written<string>;
  /** Document that it was made by. */
  readonly document?: Written<string>;
  /** Weight added; negative when more came out than went in. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Arm at which this weight acts. */
  readonly arm?: Written<Quantity<"length">>;
}

/** Crew. */
export interface Crew {
  readonly place: Place;
  /** Weight of the crew that is required. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Stations from which the aircraft may be flown with this crew alone. */
  readonly stations?: readonly Written<string>[];
}

/** Powerplant. */
export interface Powerplant {
  readonly place: Place;
  /** The published minimum fuel is for piston engines. */
  readonly kind?: Written<"piston" | "turbine">;
  /** How many engines. Left out: one. */
  readonly engines?: Written<number>;
  /** Maximum except take-off (METO) power of one engine. */
  readonly power?: Written<Quantity<"power">>;
  /** Whose power the minimum fuel of a twin counts: documents differ. Left out: one engine's, which is less fuel. */
  readonly powerCounted?: Written<"one-engine" | "all-engines">;
  /** Minimum fuel that the maker states, in place of the published rule. */
  readonly minimumFuel?: Written<Quantity<"mass">>;
}

/** Oil. */
export interface Oil {
  readonly place: Place;
  /** Weight of the full oil. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Its arm, from the datum. */
  readonly arm?: Written<Quantity<"length">>;
}

/** One kit, shared by many airframes: its components and its protective devices. File names end in .kit.yaml. */
export interface KitRecord {
  readonly place: Place;
  /** Which kit this is. */
  readonly kit?: Identity;
  /** Parts of the kit that weigh something or draw current. */
  readonly components?: readonly Component[];
  /** Breakers and fuses that come with the kit. */
  readonly devices?: readonly Device[];
  /** Aircraft that the kit may go into, one entry for each group with the same terms. */
  readonly eligibility?: readonly Eligible[];
  /** Fans, with the points of their curves. */
  readonly fans?: readonly Fan[];
}

/** Kit identity. */
export interface Identity {
  readonly place: Place;
  /** Kit number. */
  readonly number?: Written<string>;
  /** Revision of the kit's data. */
  readonly revision?: Written<string>;
  /** What the kit is. */
  readonly name?: Written<string>;
  /** Who makes it. */
  readonly maker?: Written<string>;
}

/** Component. */
export interface Component {
  readonly place: Place;
  /** Name of this component. */
  readonly id?: Written<string>;
  /** Part number or name. */
  readonly part?: Written<string>;
  /** Weight as installed, without wiring. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Current or power drawn, one entry for each operating mode. */
  readonly draws?: readonly Draw[];
  /** Decides how switches and relays are derated. Left out: they are not derated for it. */
  readonly loadType?: Written<"lamp" | "inductive" | "resistive" | "motor">;
  /** True when it is needed for safe flight. */
  readonly essential?: Written<boolean>;
  /** Lowest voltage at which it works, from its maker's data. */
  readonly leastVoltage?: Written<Quantity<"voltage">>;
  /** What it cools or heats, from its maker's data: one entry for each mode, or several of a mode at rising outside temperatures. */
  readonly conditioning?: readonly Conditioning[];
  /** Box that it fills, on its own base. */
  readonly size?: Size;
  /** Where its centre of gravity is in this box. */
  readonly cg?: Spot;
  /** Where its fasteners are. */
  readonly mount?: Pattern;
  /** Room that it needs around it, for air, cables or service. */
  readonly clearance?: Clearance;
  /** What its own cooling air has to do. */
  readonly cooling?: Cooling;
  /** What is done at it where it is installed: each of it has to be within reach, mostly through a panel. */
  readonly servicing?: readonly Servicing[];
}

/** Draw. */
export interface Draw {
  readonly place: Place;
  /** Name of the operating mode. */
  readonly mode?: Written<string>;
  /** Current drawn at the nominal voltage. */
  readonly current?: Written<Quantity<"current">>;
  /** Power drawn, in place of a current. */
  readonly power?: Written<Quantity<"power">>;
  /** Resistance, in place of a current, for a heater. */
  readonly resistance?: Written<Quantity<"resistance">>;
  /** Share of the time that it runs in a condition longer than a cycle. Left out: 100 %. */
  readonly duty?: Written<Quantity<"ratio">>;
  /** Current at switching on, from its maker's data. What lasts longer than 5 s is a load of its own: write it as a mode, and let it run in a condition with a duration. */
  readonly inrush?: Written<Quantity<"current">>;
  /** How long the inrush lasts. */
  readonly inrushTime?: Written<Quantity<"time">>;
  /** Heat that it gives to its cooling air in this mode, from its maker's data. */
  readonly heat?: Written<Quantity<"power">>;
}

/** Conditioning. */
export interface Conditioning {
  readonly place: Place;
  /** Operating mode, as among its draws. */
  readonly mode?: Written<string>;
  /** Whether it cools or heats. */
  readonly does?: Written<"cool" | "heat">;
  /** Heat that it takes out or puts in, moisture counted. */
  readonly capacity?: Written<Quantity<"power">>;
  /** Outside temperature that the capacity holds at. Left out: at every one. */
  readonly outside?: Written<Quantity<"temperature">>;
}

/** Size. */
export interface Size {
  readonly place: Place;
  /** From its front to its rear. */
  readonly length?: Written<Quantity<"length">>;
  /** From its left to its right. */
  readonly width?: Written<Quantity<"length">>;
  /** From its bottom to its top. */
  readonly height?: Written<Quantity<"length">>;
}

/** Spot in a component. */
export interface Spot {
  readonly place: Place;
  /** Distance from its front, to the rear. */
  readonly fromFront?: Written<Quantity<"length">>;
  /** Distance from its left side, to the right. */
  readonly fromLeft?: Written<Quantity<"length">>;
  /** Distance from its bottom, upward. */
  readonly fromBottom?: Written<Quantity<"length">>;
}

/** Fastener pattern. */
export interface Pattern {
  readonly place: Place;
  /** Face that rests on the structure. */
  readonly face?: Written<"bottom" | "top" | "left" | "right" | "front" | "rear">;
  /** Where each fastener is, in the plane of the face: two distances each. */
  readonly fasteners?: readonly Spot[];
}

/** Clearance. */
export interface Clearance {
  readonly place: Place;
  /** Distance that everything else must keep from it. */
  readonly least?: Written<Quantity<"length">>;
  /** The document that asks for it. */
  readonly data?: Written<string>;
}

/** Cooling. */
export interface Cooling {
  readonly place: Place;
  /** Rise of its cooling air's temperature that it allows. */
  readonly rise?: Written<Quantity<"temperature-difference">>;
  /** Cooling air that it needs in any mode, in place of heat and rise. */
  readonly air?: Written<Quantity<"mass-flow">>;
  /** Flow at which the pressure loss of its air passage was measured. */
  readonly lossAt?: Written<Quantity<"volume-flow">>;
  /** Pressure loss of its own air passage at that flow. */
  readonly loss?: Written<Quantity<"pressure">>;
  /** Density of the air in that measurement. */
  readonly lossDensity?: Written<Quantity<"density">>;
  /** Whose figures these are. */
  readonly data?: Written<string>;
}

/** Servicing. */
export interface Servicing {
  readonly place: Place;
  /** What is done, in words that go after 'to'. */
  readonly what?: Written<string>;
  /** Where on the component it is done. Left out: at whichever point of it is the nearest. */
  readonly at?: Spot;
  /** The document that asks for it. */
  readonly data?: Written<string>;
}

/** Protective device. */
export interface Device {
  readonly place: Place;
  /** Name of this device. */
  readonly id?: Written<string>;
  /** Breaker or fuse: the wire chart rates them apart. */
  readonly kind?: Written<"breaker" | "fuse">;
  /** Rated current. */
  readonly rating?: Written<Quantity<"current">>;
  /** Part number or name. */
  readonly part?: Written<string>;
  /** Resistance of the device. Left out: none. */
  readonly resistance?: Written<Quantity<"resistance">>;
  /** When it opens, from its maker's data, rising. Nothing is assumed where this is left out. */
  readonly opening?: readonly OpeningPoint[];
  /** How a breaker is reset. Left out: manual. */
  readonly reset?: Written<"manual" | "automatic">;
  /** True when a breaker can be opened by hand, by pulling its button. */
  readonly pullable?: Written<boolean>;
  /** Whose opening times these are. */
  readonly data?: Written<string>;
}

/** Opening point. */
export interface OpeningPoint {
  readonly place: Place;
  /** Current as a share of the rating. */
  readonly at?: Written<Quantity<"ratio">>;
  /** Shortest time to open. */
  readonly earliest?: Written<Quantity<"time">>;
  /** Longest time to open. */
  readonly latest?: Written<Quantity<"time">>;
}

/** Eligible aircraft. */
export interface Eligible {
  readonly place: Place;
  /** Type as the airframe record names it. */
  readonly type?: Written<string>;
  /** Ranges of serial numbers. Left out: every serial number. */
  readonly serials?: readonly SerialRange[];
  /** Bases of certification. Left out: every one. */
  readonly certificationBases?: readonly Written<"CAR 3" | "14 CFR 23 before Amdt 23-64" | "14 CFR 23 from Amdt 23-64">[];
  /** Equipment that the aircraft must have, by its id in the airframe's equipment list. */
  readonly equipment?: readonly Written<string>[];
  /** Modifications that must be done before or with this one. */
  readonly modifications?: readonly Written<string>[];
  /** Modifications that this one does not go with. */
  readonly incompatible?: readonly Written<string>[];
  /** The document that says so. */
  readonly data?: Written<string>;
}

/** Serial numbers. */
export interface SerialRange {
  readonly place: Place;
  /** First serial number. */
  readonly from?: Written<string>;
  /** Last serial number. Left out: and on. */
  readonly to?: Written<string>;
}

/** Fan. */
export interface Fan {
  readonly place: Place;
  /** Name of this fan. */
  readonly id?: Written<string>;
  /** Component that it belongs to: it turns while that runs. */
  readonly component?: Written<string>;
  /** Static pressure against flow, from its maker's data, flow rising and pressure falling. */
  readonly curve?: readonly FanPoint[];
  /** Density of the air for which the curve holds. */
  readonly density?: Written<Quantity<"density">>;
  /** Whose curve it is. */
  readonly data?: Written<string>;
}

/** Fan point. */
export interface FanPoint {
  readonly place: Place;
  /** Volume flow. */
  readonly flow?: Written<Quantity<"volume-flow">>;
  /** Static pressure at this flow. */
  readonly pressure?: Written<Quantity<"pressure">>;
}

/** One kit in one airframe: where it goes, how it is wired and protected, what is cut, what it does to weight and balance. File names end in .install.yaml. */
export interface InstallRecord {
  readonly place: Place;
  /** Head of the document. */
  readonly document?: Document;
  /** Path of the airframe record, relative to this file and inside the workspace; or the record itself, written inline. */
  readonly airframe?: Link<AirframeRecord>;
  /** Path of the kit record, relative to this file and inside the workspace; or the record itself, written inline. */
  readonly kit?: Link<KitRecord>;
  /** Conditions of flight and of the ground, and which loads run in each. */
  readonly conditions?: readonly Condition[];
  /** Where each component of the kit goes. */
  readonly placement?: readonly Placement[];
  /** Equipment taken out of the airframe. */
  readonly removed?: readonly Removed[];
  /** Other things added: harness, brackets, doublers, ballast. */
  readonly added?: readonly Added[];
  /** How the weight of the wires is counted. Left out: the added items have it. */
  readonly harness?: Harness;
  /** Bundles that wires run in; a wire outside any bundle runs alone in free air. */
  readonly bundles?: readonly Bundle[];
  /** Breakers and fuses, and where each sits in the circuit. */
  readonly protection?: readonly Protection[];
  /** Switches, relays, contactors, shunts and connectors that a circuit runs through. */
  readonly contacts?: readonly Contact[];
  /** Terminal strips and splices where wires meet. */
  readonly junctions?: readonly Junction[];
  /** Wire runs, each from the end nearer the source to the end nearer the load, or from a load to its ground. */
  readonly wires?: readonly Wire[];
  /** Bonds, with their measured resistance. */
  readonly bonds?: readonly Bond[];
  /** Spare fuses carried on board. */
  readonly spares?: readonly Spare[];
  /** Openings cut in panels. */
  readonly cutouts?: readonly Cutout[];
  /** Bent sheet parts that are made for the installation. */
  readonly brackets?: readonly Bracket[];
  /** Hoses and tubes that carry fluids. */
  readonly lines?: readonly Line[];
  /** Holes that wires and lines go through. */
  readonly passThroughs?: readonly PassThrough[];
  /** Drains, each from its pan to its outlet. */
  readonly drains?: readonly Drain[];
  /** Cooling or heating of the equipped spaces, condition by condition. */
  readonly climate?: readonly Climate[];
  /** Modifications that the kit requires and that are done together with this one. */
  readonly prerequisites?: readonly Prerequisite[];
  /** How each component is fastened, and to what. */
  readonly mounts?: readonly Mount[];
  /** Controls and breakers that have to be reached from a seat, and where they are. */
  readonly reach?: readonly Reach[];
  /** Ways of cooling air through openings, past what it cools. */
  readonly airPaths?: readonly AirPath[];
  /** Ducts that supply air, each a tree from its supply to its outlets. */
  readonly ducts?: readonly Duct[];
  /** Permanent ballast that the modification adds. */
  readonly ballast?: readonly Ballast[];
  /** Placards that lower the limit of a station. */
  readonly placards?: readonly Placard[];
  /** Findings that are accepted: each with its reason, the data that allows it, who accepted it and until when. */
  readonly deviations?: readonly Deviation[];
}

/** Document head. */
export interface Document {
  readonly place: Place;
  /** Document number. */
  readonly number?: Written<string>;
  /** Revision of this document. */
  readonly revision?: Written<string>;
  /** What this record is of, in a few words: the kit and the aircraft. */
  readonly title?: Written<string>;
  /** Where the document stands: in-work while it has blanks, which then only warn. Approval is given by licensed persons, outside this tool. */
  readonly status?: Written<"in-work" | "draft" | "in-review" | "released" | "superseded">;
  /** Document that the marking of wires follows: their intervals differ. Left out: AC 43.13-1B. */
  readonly wireMarking?: Written<"AC 43.13-1B" | "MIL-W-5088L">;
  /** Document that the mounts' emergency load factors follow. Left out: the certification basis of the aircraft. */
  readonly loadFactors?: Written<"AC 43.13-2B">;
}

/** Condition. */
export interface Condition {
  readonly place: Place;
  /** Name of this condition. */
  readonly id?: Written<string>;
  /** Phase that it belongs to: decides which existing loads run. */
  readonly phase?: Written<"ground-power" | "start" | "taxi" | "take-off" | "cruise" | "landing" | "source-failed">;
  /** How long it lasts. Left out: continuous. Up to 2 min counts as intermittent for voltage drop. A short peak load is a mode of its component that runs in a condition as short as that. */
  readonly duration?: Written<Quantity<"time">>;
  /** Pressure altitude, for the derating of wires. */
  readonly altitude?: Written<Quantity<"length">>;
  /** Air temperature at the wires. */
  readonly ambient?: Written<Quantity<"temperature">>;
  /** Temperature of the outside air, for its density. Left out: that of the standard atmosphere. */
  readonly outsideAir?: Written<Quantity<"temperature">>;
  /** Speed of the engine: decides what alternators give. */
  readonly engineSpeed?: Written<Quantity<"speed">>;
  /** Sources that are lost or off. */
  readonly failed?: readonly Written<string>[];
  /** Which components run, each with its mode. */
  readonly loads?: readonly Pair[];
}

/** Placement. */
export interface Placement {
  readonly place: Place;
  /** Component of the kit. */
  readonly component?: Written<string>;
  /** Arm of its centre of gravity, from the airframe's datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where its centre of gravity stands to the side, from the aircraft's centreline; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height of its centre of gravity, in the airframe's water lines; up is positive. */
  readonly waterLine?: Written<Quantity<"length">>;
  /** Which of its faces is up. Left out: its top. */
  readonly up?: Written<"top" | "bottom" | "left" | "right" | "front" | "rear">;
  /** How it is turned about the vertical, counter-clockwise seen from above. Left out: 0 deg, its front forward. */
  readonly turn?: Written<Quantity<"angle">>;
  /** Panel that it is brought in and taken out through. */
  readonly through?: Written<string>;
  /** Panels that it is serviced through where it stands, one of them for each job; an empty list where it stands open. */
  readonly servedThrough?: readonly Written<string>[];
  /** Other arms at which this airframe's mounts permit the component: a remedy moves it to one of these only. Left out: to any arm. */
  readonly alternatives?: readonly Written<Quantity<"length">>[];
}

/** Removed equipment. */
export interface Removed {
  readonly place: Place;
  /** Item of the airframe's equipment list. */
  readonly equipment?: Written<string>;
  /** Component or added item that takes its place; asked for where it is required equipment. */
  readonly replacedBy?: Written<string>;
}

/** Added item. */
export interface Added {
  readonly place: Place;
  /** Name of this item. */
  readonly id?: Written<string>;
  /** Part number or name. */
  readonly part?: Written<string>;
  /** Weight of the item. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Arm of the item, from the airframe's datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where its centre of gravity stands to the side, from the aircraft's centreline; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height of its centre of gravity, in the airframe's water lines; up is positive. */
  readonly waterLine?: Written<Quantity<"length">>;
}

/** Harness. */
export interface Harness {
  readonly place: Place;
  /** Arm of the wires' common centre of gravity, from the airframe's datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where its centre of gravity stands to the side, from the aircraft's centreline; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height of its centre of gravity, in the airframe's water lines; up is positive. */
  readonly waterLine?: Written<Quantity<"length">>;
  /** `computed`: the weights of the wires in this record, summed, are added at this arm; `recorded`: an added item stands for them. Left out: recorded. */
  readonly counted?: Written<"computed" | "recorded">;
}

/** Bundle. */
export interface Bundle {
  readonly place: Place;
  /** Name of this bundle. */
  readonly id?: Written<string>;
  /** How many wires run in the bundle, existing ones counted. */
  readonly wires?: Written<number>;
  /** Current in the bundle as a share of what all its wires may carry. Existing wires are known only to you, so it is stated, and checked against the wires in this record. */
  readonly loading?: Written<Quantity<"ratio">>;
  /** Air temperature along this bundle, where it differs from the condition's. */
  readonly ambient?: Written<Quantity<"temperature">>;
  /** Outside diameter of the bundle where it is thickest. Left out: its route counts as its centre line. */
  readonly diameter?: Written<Quantity<"length">>;
  /** Points that its centre line passes, in order, straight from each to the next. Its distances to lines with a route and to control runs are computed. */
  readonly route?: readonly SpacePoint[];
}

/** Protection. */
export interface Protection {
  readonly place: Place;
  /** Name of this position. */
  readonly id?: Written<string>;
  /** Device of the kit. */
  readonly device?: Written<string>;
  /** Bus, junction or device that feeds it without a wire. Left out when a wire leads to it. */
  readonly mountedOn?: Written<string>;
  /** True when resetting or replacing it in flight is essential to safety. */
  readonly resetInFlight?: Written<boolean>;
  /** True when the crew must be able to take its circuit off power with it, as to shed a load. */
  readonly openInFlight?: Written<boolean>;
  /** True when the required crew can reach and identify it from their seats. */
  readonly withinReach?: Written<boolean>;
}

/** Contact. */
export interface Contact {
  readonly place: Place;
  /** Name of this contact. */
  readonly id?: Written<string>;
  /** What it is. */
  readonly kind?: Written<"switch" | "relay" | "contactor" | "shunt" | "connector" | "splice">;
  /** What feeds it without a wire. Left out when a wire leads to it. */
  readonly mountedOn?: Written<string>;
  /** Rated current, for direct current, from its maker's data. */
  readonly rating?: Written<Quantity<"current">>;
  /** Resistance of the closed contact. Left out: none. */
  readonly resistance?: Written<Quantity<"resistance">>;
}

/** Junction. */
export interface Junction {
  readonly place: Place;
  /** Name of this junction. */
  readonly id?: Written<string>;
  /** Where it is. */
  readonly location?: Written<string>;
  /** Most terminals on one of its studs. */
  readonly terminals?: Written<number>;
}

/** Wire. */
export interface Wire {
  readonly place: Place;
  /** Identification of the wire. */
  readonly id?: Written<string>;
  /** End nearer the source (for a return: the load). */
  readonly from?: Written<string>;
  /** End nearer the load (for a return: the ground point). */
  readonly to?: Written<string>;
  /** Wire gauge. */
  readonly gauge?: Written<Quantity<"gauge">>;
  /** Length of the run, terminal to terminal. */
  readonly length?: Written<Quantity<"length">>;
  /** Temperature rating of the wire's insulation and plating. */
  readonly rating?: Written<Quantity<"temperature">>;
  /** Conductor. Left out: copper. */
  readonly material?: Written<"copper" | "aluminium">;
  /** Bundle that it runs in. Left out: alone in free air. */
  readonly bundle?: Written<string>;
  /** Number of strands. */
  readonly strands?: Written<number>;
  /** Nicked strands, the most at any of its ends, as inspected. */
  readonly nickedStrands?: Written<number>;
  /** Broken strands, the most at any of its ends, as inspected. */
  readonly brokenStrands?: Written<number>;
  /** Outside diameter over the insulation, from its maker's data. */
  readonly outsideDiameter?: Written<Quantity<"length">>;
  /** Weight of the finished wire, from its maker's data. Left out: the conductor's weight is computed. */
  readonly weightPerLength?: Written<Quantity<"mass-per-length">>;
  /** Smallest bend radius along the run. */
  readonly bendRadius?: Written<Quantity<"length">>;
  /** Largest distance between supports. */
  readonly supportSpacing?: Written<Quantity<"length">>;
  /** Distance between its identification marks. */
  readonly markingInterval?: Written<Quantity<"length">>;
  /** Whether the marks are on the wire itself or on sleeves around it. Left out: direct by AC 43.13-1B, sleeve by MIL-W-5088L. */
  readonly marking?: Written<"direct" | "sleeve">;
  /** Number of splices in the run. */
  readonly splices?: Written<number>;
  /** Where it runs, for the rules of aluminium wire. Left out: cabin. */
  readonly zone?: Written<"cabin" | "engine" | "severe-vibration" | "corrosive">;
  /** What it passes near, with the least distance. */
  readonly passes?: readonly Pass[];
  /** For a return: 'composite' when its current finds its way through carbon-fibre structure. */
  readonly through?: Written<"wire" | "composite">;
}

/** Pass. */
export interface Pass {
  readonly place: Place;
  /** What it passes. */
  readonly by?: Written<"fuel-line" | "oxygen-line" | "hydraulic-line" | "control-cable" | "movable-control" | "structure">;
  /** Least distance to it. */
  readonly distance?: Written<Quantity<"length">>;
  /** True when it is clamped closely or supported rigidly, so that contact is impossible with a broken wire and one tie missing. */
  readonly clamped?: Written<boolean>;
  /** True when a mechanical guard, or a grommet, lies between. */
  readonly guarded?: Written<boolean>;
}

/** Bond. */
export interface Bond {
  readonly place: Place;
  /** Name of this bond. */
  readonly id?: Written<string>;
  /** What it is for: a bonding jumper, an exposed frame to structure, a ground return, or the draining of static charge. */
  readonly kind?: Written<"jumper" | "frame" | "ground-return" | "static">;
  /** Resistance, measured or designed. */
  readonly resistance?: Written<Quantity<"resistance">>;
  /** How it is fastened. */
  readonly fastened?: Written<"bolt" | "rivet" | "self-tapping-screw">;
  /** What it is fastened to. */
  readonly onto?: Written<"aluminium" | "steel" | "magnesium" | "composite">;
}

/** Spare. */
export interface Spare {
  readonly place: Place;
  /** Fuse that it replaces. */
  readonly device?: Written<string>;
  /** How many are carried within the pilot's reach. */
  readonly count?: Written<number>;
}

/** Cutout. */
export interface Cutout {
  readonly place: Place;
  /** Name of this cutout. */
  readonly id?: Written<string>;
  /** Panel that is cut. */
  readonly panel?: Written<string>;
  /** What it is for. */
  readonly purpose?: Written<string>;
  /** The opening, in the panel's x and y. */
  readonly opening?: Figure;
  /** Doubler or ring fastened around the opening. */
  readonly reinforcement?: Reinforcement;
  /** For a sandwich panel: what is done to core, edge and faces. */
  readonly core?: CoreTreatment;
  /** Mesh or perforated plate in front of the opening. */
  readonly screen?: Screen;
}

/** Reinforcement. */
export interface Reinforcement {
  readonly place: Place;
  /** A doubler has an outline of its own; a ring runs around the opening at one width. */
  readonly kind?: Written<"doubler" | "ring">;
  /** Material and temper. */
  readonly material?: Written<string>;
  /** Sheet thickness. */
  readonly thickness?: Written<Quantity<"length">>;
  /** Outer outline of a doubler, in the panel's x and y. */
  readonly outline?: Figure;
  /** Width of a ring, from the opening's edge to its own. */
  readonly width?: Written<Quantity<"length">>;
  /** Density of its material, for its weight. */
  readonly density?: Written<Quantity<"density">>;
  /** What the tables of rivets reduce their count for: sheet in a single lap, a stringer, or an intermediate frame. Left out: nothing. */
  readonly joint?: Written<"single-lap" | "stringer" | "intermediate-frame">;
  /** What holds it to the panel. */
  readonly fasteners?: DoublerFasteners;
}

/** Fasteners of a reinforcement. */
export interface DoublerFasteners {
  readonly place: Place;
  /** 2117-T4 aluminium rivets, or AN3 bolts. */
  readonly kind?: Written<"2117-rivet" | "AN3-bolt">;
  /** Shank diameter. */
  readonly diameter?: Written<Quantity<"length">>;
  /** Head style: it decides edge distance and pitch. */
  readonly head?: Written<"protruding" | "countersunk">;
  /** How many stand on each side of the opening, across the load. */
  readonly countPerSide?: Written<number>;
  /** In how many rows they stand on each side. Left out: one. */
  readonly rows?: Written<number>;
  /** Distance between neighbours in a row. Measured instead where 'lines' say where they stand. */
  readonly pitch?: Written<Quantity<"length">>;
  /** Distance between rows. */
  readonly rowPitch?: Written<Quantity<"length">>;
  /** Least distance from a centre to an edge of panel, opening or reinforcement. */
  readonly edgeDistance?: Written<Quantity<"length">>;
  /** Weight of one fastener, set. */
  readonly weightEach?: Written<Quantity<"mass">>;
  /** How many there are all around. Left out: twice the count of each side. */
  readonly total?: Written<number>;
  /** Where they stand: lines of evenly spaced fasteners. */
  readonly lines?: readonly FastenerLine[];
}

/** Line of fasteners. */
export interface FastenerLine {
  readonly place: Place;
  /** Centre of the first fastener. */
  readonly from?: Point;
  /** Centre of the last fastener. */
  readonly to?: Point;
  /** How many fasteners, both ends counted. */
  readonly count?: Written<number>;
}

/** Core treatment. */
export interface CoreTreatment {
  readonly place: Place;
  /** What closes the core: potting compound, a close-out frame, or an insert. */
  readonly treatment?: Written<"potted" | "closed-out" | "insert">;
  /** What seals the cut edge against water. */
  readonly edgeSeal?: Written<string>;
  /** What reinforces the faces. */
  readonly faceReinforcement?: Written<string>;
}

/** Screen. */
export interface Screen {
  readonly place: Place;
  /** A mesh of round wires with square openings; a plate with round holes in a square or a 60 degree pattern (one of 45 degrees is a square one, its pitch along the diagonal); or another, whose free area and loss are recorded. */
  readonly kind?: Written<"square-mesh" | "holes-square" | "holes-staggered" | "other">;
  /** Clear width between two wires, or diameter of the holes. */
  readonly opening?: Written<Quantity<"length">>;
  /** Diameter of a mesh's wires. */
  readonly wire?: Written<Quantity<"length">>;
  /** Distance between centres of neighbouring holes. */
  readonly pitch?: Written<Quantity<"length">>;
  /** Share of the area that is open, for another kind. */
  readonly freeArea?: Written<Quantity<"ratio">>;
  /** Loss coefficient on the velocity ahead of it, from its maker's data. Left out: from a formula that rests on memory. */
  readonly loss?: Written<number>;
  /** Whose figures these are. */
  readonly data?: Written<string>;
}

/** Bracket. */
export interface Bracket {
  readonly place: Place;
  /** Name of this bracket. */
  readonly id?: Written<string>;
  /** Part number or name. */
  readonly part?: Written<string>;
  /** Material and temper. */
  readonly material?: Written<string>;
  /** Sheet thickness. */
  readonly thickness?: Written<Quantity<"length">>;
  /** Length of each leg in turn, outside, to where the outsides of its neighbours would meet it: one more than there are bends. */
  readonly legs?: readonly Written<Quantity<"length">>[];
  /** Bends between the legs, in their order. */
  readonly bends?: readonly BracketBend[];
  /** Length of the flat blank, as the drawing has it. */
  readonly flat?: Written<Quantity<"length">>;
  /** Least inside radius that this sheet may be bent to. */
  readonly leastRadius?: Written<Quantity<"length">>;
  /** The document that gives the least radius. */
  readonly data?: Written<string>;
}

/** Bend. */
export interface BracketBend {
  readonly place: Place;
  /** Inside radius. */
  readonly radius?: Written<Quantity<"length">>;
  /** How far the sheet is turned out of the flat: less than half a turn. */
  readonly angle?: Written<Quantity<"angle">>;
}

/** Line. */
export interface Line {
  readonly place: Place;
  /** Name of this line. */
  readonly id?: Written<string>;
  /** Flexible hose or rigid tube. */
  readonly kind?: Written<"hose" | "tube">;
  /** What it carries. `r-134a` has a published table of pressure against temperature; `refrigerant` is any other. */
  readonly fluid?: Written<"fuel" | "oil" | "hydraulic" | "oxygen" | "r-134a" | "refrigerant" | "coolant" | "water" | "air">;
  /** Size as a dash number: outside diameter in sixteenths of an inch, of the tube or of the tube that the hose fits. */
  readonly dash?: Written<number>;
  /** The same as a length, in place of the dash number. */
  readonly outsideDiameter?: Written<Quantity<"length">>;
  /** Material of a tube. */
  readonly material?: Written<"aluminium" | "steel" | "copper">;
  /** Wall of a tube. */
  readonly wall?: Written<Quantity<"length">>;
  /** Specification of a hose, where its published table is to be used. */
  readonly specification?: Written<"MIL-H-8794">;
  /** Limits from its maker's data; they go before the published tables. */
  readonly makerLimits?: LineLimits;
  /** Length of a tube's run, or of the flexible part of a hose, fittings not counted. */
  readonly length?: Written<Quantity<"length">>;
  /** Way that a hose has to go along its route, fitting to fitting. */
  readonly way?: Written<Quantity<"length">>;
  /** Points that its centre line passes, in order, straight from each to the next. Its distances to bundles with a route and to control runs are computed. */
  readonly route?: readonly SpacePoint[];
  /** Whether what it joins can move against each other. Left out: not known. */
  readonly ends?: Written<"rigid" | "flexible">;
  /** Greatest working pressure. */
  readonly pressure?: Written<Quantity<"pressure">>;
  /** Highest temperature that it and its fluid reach, hot soak counted. */
  readonly hottest?: Written<Quantity<"temperature">>;
  /** Its bends. An empty list says that it runs straight. */
  readonly bends?: readonly LineBend[];
  /** Largest distance between supports. */
  readonly supportSpacing?: Written<Quantity<"length">>;
  /** True when a tube carries unions or other fittings between its supports. */
  readonly carriesFittings?: Written<boolean>;
  /** True when it is bonded at each clamp. */
  readonly bonded?: Written<boolean>;
  /** What it passes near, with the least distance. */
  readonly passes?: readonly LinePass[];
  /** What it adds to the aircraft, fittings, clamps and what it holds counted. Left out: it is not counted here, an added item may stand for it. */
  readonly installedWeight?: InstalledWeight;
  /** Its flare nuts. */
  readonly fittings?: readonly LineFitting[];
}

/** Limits of a line's maker. */
export interface LineLimits {
  readonly place: Place;
  /** Least bend radius. */
  readonly bendRadius?: Written<Quantity<"length">>;
  /** Largest distance between supports. */
  readonly supportSpacing?: Written<Quantity<"length">>;
  /** Greatest working pressure. */
  readonly pressure?: Written<Quantity<"pressure">>;
  /** Highest temperature. */
  readonly temperature?: Written<Quantity<"temperature">>;
  /** The document that gives these figures. */
  readonly data?: Written<string>;
}

/** Bend. */
export interface LineBend {
  readonly place: Place;
  /** Radius, of a tube to its centre line. */
  readonly radius?: Written<Quantity<"length">>;
  /** Least outside diameter measured across the bend of a tube. */
  readonly flattened?: Written<Quantity<"length">>;
}

/** Pass of a line. */
export interface LinePass {
  readonly place: Place;
  /** What it passes. */
  readonly by?: Written<"wire" | "control-cable" | "movable-control" | "structure" | "exhaust">;
  /** Least distance to it. */
  readonly distance?: Written<Quantity<"length">>;
  /** Where the wire runs, seen from the line. Left out: not known. */
  readonly stands?: Written<"above" | "beside" | "below">;
  /** True when both are clamped so that contact is impossible with a broken wire and one tie missing. */
  readonly clamped?: Written<boolean>;
  /** True when a guard, a grommet, or a fireproof shield lies between. */
  readonly guarded?: Written<boolean>;
  /** True when the wire is held up by the line. */
  readonly hangsOnIt?: Written<boolean>;
}

/** Installed weight. */
export interface InstalledWeight {
  readonly place: Place;
  /** Weight of the whole run. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Arm of its centre of gravity, from the airframe's datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where its centre of gravity stands to the side, from the aircraft's centreline; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
  /** Height of its centre of gravity, in the airframe's water lines; up is positive. */
  readonly waterLine?: Written<Quantity<"length">>;
}

/** Flare nut. */
export interface LineFitting {
  readonly place: Place;
  /** Name of this nut. */
  readonly id?: Written<string>;
  /** Torque to tighten it to. */
  readonly torque?: Written<Quantity<"torque">>;
  /** Published table that the torque is taken from: they differ. */
  readonly table?: Written<"NAVEDTRA 14018 Table 5-9" | "TM 55-1520-240">;
  /** Column of that table. */
  readonly column?: Written<"aluminium-tube" | "steel-tube" | "hose">;
}

/** Pass-through. */
export interface PassThrough {
  readonly place: Place;
  /** Name of this pass-through. */
  readonly id?: Written<string>;
  /** Inside diameter: of the grommet, or of the bare hole. */
  readonly hole?: Written<Quantity<"length">>;
  /** True when a grommet lines the hole. */
  readonly grommet?: Written<boolean>;
  /** Least distance from what goes through to the edge. */
  readonly clearance?: Written<Quantity<"length">>;
  /** True when what goes through is clamped right there, so that it cannot reach the edge. */
  readonly clamped?: Written<boolean>;
  /** Wires that go through. */
  readonly wires?: readonly Written<string>[];
  /** Lines that go through. */
  readonly lines?: readonly Written<string>[];
}

/** Drain. */
export interface Drain {
  readonly place: Place;
  /** Name of this drain. */
  readonly id?: Written<string>;
  /** Points that the water passes, from the pan to the outlet. */
  readonly points?: readonly DrainPoint[];
}

/** Point of a drain. */
export interface DrainPoint {
  readonly place: Place;
  /** What is there. */
  readonly at?: Written<string>;
  /** Height of the lowest point of its inside. */
  readonly waterLine?: Written<Quantity<"length">>;
  /** Where it is along the aircraft, from the datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Where it is to the side; right is positive. */
  readonly buttLine?: Written<Quantity<"length">>;
}

/** Climate of a space. */
export interface Climate {
  readonly place: Place;
  /** Space of the airframe. */
  readonly space?: Written<string>;
  /** Temperature that it is to be brought to and held at. */
  readonly setPoint?: Written<Quantity<"temperature">>;
  /** Components that cool or heat it. */
  readonly servedBy?: readonly Written<string>[];
  /** Outside air let in. */
  readonly freshAir?: Written<Quantity<"volume-flow">>;
  /** Water in the air inside at the set point. */
  readonly insideMoisture?: Written<Quantity<"humidity-ratio">>;
  /** Components whose electrical power warms it. */
  readonly equipment?: readonly HeatSource[];
  /** Shades on its glazing. */
  readonly shades?: readonly Shade[];
  /** Conditions that it has to be comfortable in. */
  readonly cases?: readonly ClimateCase[];
}

/** Heat source. */
export interface HeatSource {
  readonly place: Place;
  /** Component of the kit. */
  readonly component?: Written<string>;
  /** Share of its power that warms this space. Left out: 100 %. */
  readonly share?: Written<Quantity<"ratio">>;
}

/** Shade. */
export interface Shade {
  readonly place: Place;
  /** Glazing that it covers. */
  readonly glazing?: Written<string>;
  /** Share of the sun's gain that still gets through. */
  readonly passes?: Written<Quantity<"ratio">>;
}

/** Climate case. */
export interface ClimateCase {
  readonly place: Place;
  /** Condition whose loads and altitude it takes. */
  readonly condition?: Written<string>;
  /** Temperature of the outside air. Left out: that of the condition. */
  readonly outside?: Written<Quantity<"temperature">>;
  /** Power of the sun on the glazing. */
  readonly sun?: Written<Quantity<"irradiance">>;
  /** Water in the outside air. */
  readonly outsideMoisture?: Written<Quantity<"humidity-ratio">>;
  /** Whether the shades are in place. Left out: stowed. */
  readonly shades?: Written<"fitted" | "stowed">;
  /** How many people are in it. Left out: none. */
  readonly people?: Written<number>;
  /** What they do: decides their heat by the ASHRAE table. */
  readonly activity?: Written<"seated-at-rest" | "seated-very-light-work" | "moderate-office-work" | "standing-light-work" | "light-bench-work" | "heavy-work">;
  /** Sensible heat of each person, in place of the table's. */
  readonly sensibleEach?: Written<Quantity<"power">>;
  /** Latent heat of each person, in place of the table's. */
  readonly latentEach?: Written<Quantity<"power">>;
  /** Temperature inside at the start, after a soak. */
  readonly soak?: Written<Quantity<"temperature">>;
  /** Time within which the set point has to be reached. */
  readonly within?: Written<Quantity<"time">>;
}

/** Prerequisite. */
export interface Prerequisite {
  readonly place: Place;
  /** Modification done together with this one. */
  readonly modification?: Written<string>;
  /** The data that it is done by. */
  readonly data?: Written<string>;
}

/** Mount. */
export interface Mount {
  readonly place: Place;
  /** Component of the kit. */
  readonly component?: Written<string>;
  /** Where it stands, which decides the load factors: with the occupants, aft of them and separated by structure, in an aircraft that carries only cargo, or outside. */
  readonly where?: Written<"occupant-compartment" | "aft-of-occupants" | "cargo-only" | "external">;
  /** Shelf, floor or bulkhead of the airframe that it is fastened to. */
  readonly shelf?: Written<string>;
  /** What fastens it, the same in each place of the kit's pattern. */
  readonly fastener?: MountFastener;
  /** Least distance from the centre of a fastener to an edge of the sheet. */
  readonly edgeDistance?: Written<Quantity<"length">>;
  /** Drag of what stands outside, which pulls it aft. */
  readonly airLoad?: AirLoad;
  /** Whether the fitting factor of 1.15 applies: it does not where limit and ultimate load were proven by test, or where the joint rests on comprehensive test data. Left out: it applies. */
  readonly fitting?: Written<"factored" | "proven-by-test" | "test-data">;
  /** True when it is taken out often (14 CFR 25 only: 1.33 on its attachments). */
  readonly frequentlyRemoved?: Written<boolean>;
}

/** Fastener of a mount. */
export interface MountFastener {
  readonly place: Place;
  /** AN bolt in steel, solid rivet in 2117 (AD), or another with its own strengths. */
  readonly kind?: Written<"an-bolt" | "ad-rivet" | "other">;
  /** Shank diameter. */
  readonly diameter?: Written<Quantity<"length">>;
  /** Single shear strength, from its maker's data. Left out: that of its kind and size. */
  readonly shear?: Written<Quantity<"force">>;
  /** Tension strength, from its maker's data. Left out: that of its kind and size. */
  readonly tension?: Written<Quantity<"force">>;
  /** Head style: it decides the edge distance. Left out: protruding. */
  readonly head?: Written<"protruding" | "countersunk">;
  /** The document that gives its strengths. */
  readonly data?: Written<string>;
}

/** Air load. */
export interface AirLoad {
  readonly place: Place;
  /** An antenna, by the circular's formula for antennas, or something else, by its own drag coefficient. */
  readonly kind?: Written<"antenna" | "other">;
  /** Its area as seen from ahead. */
  readonly area?: Written<Quantity<"area">>;
  /** Greatest equivalent airspeed that it has to hold at, as a rule the never-exceed or design diving speed. */
  readonly airspeed?: Written<Quantity<"velocity">>;
  /** Drag coefficient on that area, from its maker's data or a test. No published figure was found for anything but antennas. */
  readonly coefficient?: Written<number>;
  /** The document that gives the coefficient. */
  readonly data?: Written<string>;
}

/** Reach. */
export interface Reach {
  readonly place: Place;
  /** Breaker, switch or component that has to be reached. */
  readonly control?: Written<string>;
  /** Seat that it has to be reached from. */
  readonly from?: Written<string>;
  /** Where it is. */
  readonly at?: SpacePoint;
}

/** Air path. */
export interface AirPath {
  readonly place: Place;
  /** Name of this path. */
  readonly id?: Written<string>;
  /** Fan of the kit that moves the air. */
  readonly fan?: Written<string>;
  /** Component that the air cools. */
  readonly cools?: Written<string>;
  /** Openings that the air enters by, side by side. */
  readonly inlets?: readonly Written<string>[];
  /** Openings that the air leaves by, side by side. */
  readonly outlets?: readonly Written<string>[];
  /** Loss coefficient of the bare inlets, on the velocity in them, from data. Left out: sharp entry, from memory. */
  readonly inletLoss?: Written<number>;
  /** Loss coefficient of the bare outlets, on the velocity in them. Left out: 1, all velocity pressure is lost. */
  readonly outletLoss?: Written<number>;
  /** Whose loss coefficients these are. */
  readonly data?: Written<string>;
  /** Least distance from an outlet to an inlet. */
  readonly apart?: Written<Quantity<"length">>;
  /** Where outlet air goes, seen from the inlets. */
  readonly outletBlows?: Written<"away" | "across" | "toward">;
}

/** Duct. */
export interface Duct {
  readonly place: Place;
  /** Name of this duct. */
  readonly id?: Written<string>;
  /** Fan of the kit that feeds it. */
  readonly fan?: Written<string>;
  /** Flow that feeds it, in place of a fan. */
  readonly flow?: Written<Quantity<"volume-flow">>;
  /** Its parts, from the supply on. */
  readonly segments?: readonly DuctSegment[];
  /** What it adds to the aircraft, fittings, clamps and what it holds counted. Left out: it is not counted here, an added item may stand for it. */
  readonly installedWeight?: InstalledWeight;
  /** Where air leaves it. */
  readonly outlets?: readonly DuctOutlet[];
  /** Whose loss coefficients are recorded. */
  readonly data?: Written<string>;
}

/** Duct segment. */
export interface DuctSegment {
  readonly place: Place;
  /** Name of this segment. */
  readonly id?: Written<string>;
  /** Segment that feeds it. Left out: the supply. */
  readonly after?: Written<string>;
  /** Length of the segment along its middle, from end to end. */
  readonly length?: Written<Quantity<"length">>;
  /** Inside diameter of a round duct. */
  readonly diameter?: Written<Quantity<"length">>;
  /** Inside width of a rectangular duct. */
  readonly width?: Written<Quantity<"length">>;
  /** Inside height of a rectangular duct. */
  readonly height?: Written<Quantity<"length">>;
  /** Roughness of its inside, from its maker's data. */
  readonly roughness?: Written<Quantity<"length">>;
  /** Fittings at its start and along it. */
  readonly fittings?: readonly Fitting[];
}

/** Fitting. */
export interface Fitting {
  readonly place: Place;
  /** What it is; bends by their radius in diameters. Their coefficients rest on memory: record the loss where it is known. */
  readonly kind?: Written<"sharp-entry" | "flanged-entry" | "bell-mouth" | "projecting-entry" | "bend-r1" | "bend-r1.5" | "bend-r2" | "mitre" | "mitre-vaned" | "tee-straight" | "tee-branch" | "other">;
  /** How many of them. Left out: one. */
  readonly count?: Written<number>;
  /** Loss coefficient of one, on the velocity in this segment, from data. */
  readonly loss?: Written<number>;
}

/** Duct outlet. */
export interface DuctOutlet {
  readonly place: Place;
  /** Name of this outlet. */
  readonly id?: Written<string>;
  /** Segment that it ends. */
  readonly on?: Written<string>;
  /** Free area of the outlet. Left out: that of its segment. */
  readonly area?: Written<Quantity<"area">>;
  /** Loss coefficient on the velocity in its free area. Left out: 1, all velocity pressure is lost. */
  readonly loss?: Written<number>;
  /** Flow that is needed there. */
  readonly needed?: Written<Quantity<"volume-flow">>;
}

/** Ballast. */
export interface Ballast {
  readonly place: Place;
  /** Name of this ballast. */
  readonly id?: Written<string>;
  /** Ballast station of the airframe: its arm counts. */
  readonly station?: Written<string>;
  /** Its weight. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Part number or name. */
  readonly part?: Written<string>;
}

/** Placard. */
export interface Placard {
  readonly place: Place;
  /** Name of this placard. */
  readonly id?: Written<string>;
  /** Station whose limit it lowers. */
  readonly station?: Written<string>;
  /** Greatest weight allowed there from now on. */
  readonly limit?: Written<Quantity<"mass">>;
  /** Its wording. */
  readonly text?: Written<string>;
}

/** Accepted deviation. */
export interface Deviation {
  readonly place: Place;
  /** Rule whose finding is accepted. */
  readonly rule?: Written<string>;
  /** The thing that the finding is about, as the report names it; 'record' for the record as a whole. */
  readonly subject?: Written<string>;
  /** Field that the finding stands at, as the report names it; needed where the rule finds more than one about the subject. */
  readonly field?: Written<string>;
  /** Least margin that is accepted, negative where the limit is exceeded; a value that is worse is not covered. */
  readonly leastMargin?: Written<Quantity<"ratio">>;
  /** Why it is acceptable. */
  readonly reason?: Written<string>;
  /** The approved data that allows it: document, revision, paragraph. */
  readonly reference?: Written<string>;
  /** Who accepted it. */
  readonly by?: Written<string>;
  /** Last day on which it is accepted, as year-month-day. */
  readonly until?: Written<string>;
}
