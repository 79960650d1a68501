// Written from schemas/*.schema.json by `npm run generate`. Change the schema, not this file.
import type { Quantity } from "../quantities";
import type { Link, Pair, Place, Written } from "./written";

/** One aircraft as it stands before the modification: weights, envelope, stations, electrical system, panels. File names end in .airframe.yaml. */
export interface AirframeRecord {
  readonly place: Place;
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
  readonly certificationBasis?: Written<"CAR 3" | "14 CFR 23 before Amdt 23-64" | "14 CFR 23 from Amdt 23-64">;
}

/** Empty weight statement. */
export interface EmptyStatement {
  readonly place: Place;
  /** Basic empty weight. */
  readonly weight?: Written<Quantity<"mass">>;
  /** Arm of the empty centre of gravity, from the datum. */
  readonly arm?: Written<Quantity<"length">>;
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

/** Station. */
export interface Station {
  readonly place: Place;
  /** Name of this station. */
  readonly id?: Written<string>;
  /** What it carries. */
  readonly kind?: Written<"seat" | "baggage" | "fuel" | "other">;
  /** Arm of the load from the datum. */
  readonly arm?: Written<Quantity<"length">>;
  /** Greatest weight allowed here. */
  readonly limit?: Written<Quantity<"mass">>;
  /** Usable volume of a tank. */
  readonly capacity?: Written<Quantity<"volume">>;
  /** Density of the fluid in a tank. */
  readonly density?: Written<Quantity<"density">>;
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
  /** How long a battery must feed the essential loads after the loss of every alternator. Left out: 30 min. */
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
  /** Least corner radius of an opening. */
  readonly cornerRadius?: Written<Quantity<"length">>;
  /** The document that gives these figures. */
  readonly data?: Written<string>;
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
  /** Current at switching on, from its maker's data. */
  readonly inrush?: Written<Quantity<"current">>;
  /** How long the inrush lasts. */
  readonly inrushTime?: Written<Quantity<"time">>;
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
  /** Title. */
  readonly title?: Written<string>;
  /** Where the document stands. Approval is given by licensed persons, outside this tool. */
  readonly status?: Written<"draft" | "in-review" | "released" | "superseded">;
  /** Document that the marking of wires follows: their intervals differ. Left out: AC 43.13-1B. */
  readonly wireMarking?: Written<"AC 43.13-1B" | "MIL-W-5088L">;
}

/** Condition. */
export interface Condition {
  readonly place: Place;
  /** Name of this condition. */
  readonly id?: Written<string>;
  /** Phase that it belongs to: decides which existing loads run. */
  readonly phase?: Written<"ground-power" | "start" | "taxi" | "take-off" | "cruise" | "landing" | "source-failed">;
  /** How long it lasts. Left out: continuous. Up to 2 min counts as intermittent for voltage drop. */
  readonly duration?: Written<Quantity<"time">>;
  /** Pressure altitude, for the derating of wires. */
  readonly altitude?: Written<Quantity<"length">>;
  /** Air temperature at the wires. */
  readonly ambient?: Written<Quantity<"temperature">>;
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
}

/** Removed equipment. */
export interface Removed {
  readonly place: Place;
  /** Item of the airframe's equipment list. */
  readonly equipment?: Written<string>;
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
}

/** Harness. */
export interface Harness {
  readonly place: Place;
  /** Arm of the wires' common centre of gravity, from the airframe's datum. */
  readonly arm?: Written<Quantity<"length">>;
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
