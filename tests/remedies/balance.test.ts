/** A loading that the change makes illegal, and what mends it: each remedy is the record checked again with it. */
import { describe, expect, test } from "vitest";
import { everyLoadingExample } from "../../server/src/core/rules/weights/every-loading-example";
import { faultsIn, remediesFor, titlesFor } from "./support";

const farAft = everyLoadingExample({ arm: "160.0 in" });

describe("a loading that the change makes illegal", () => {
  test("is mended by a move, by ballast or by a placard", () => {
    expect(titlesFor("loading-made-illegal", farAft)).toEqual([
      "Move RACK to 149.1 in",
      "Add 3.1 lb of ballast at nose-ballast",
      "Placard aft-baggage at 113 lb",
    ]);
  });

  test("each of them leaves a record without that fault", () => {
    for (const { text } of remediesFor("loading-made-illegal", farAft)) expect(faultsIn(text)).toEqual([]);
  });

  test("new entries go into sections of their own", () => {
    const [, ballast, placard] = remediesFor("loading-made-illegal", farAft);
    expect(ballast!.text).toMatch(
      /^ballast:\n {2}- .*id: BALLAST-1, station: nose-ballast, weight: 3\.1 lb/m,
    );
    expect(placard!.text).toMatch(/^placards:\n {2}- .*id: PLACARD-1, station: aft-baggage, limit: 113 lb/m);
  });

  test("what is there already is made heavier, or lower, in its place", () => {
    const begun = everyLoadingExample({
      arm: "160.0 in",
      sections: [
        "ballast: [{ id: LEAD, station: nose-ballast, weight: 1.5 lb }]",
        "placards: [{ id: WALL, station: aft-baggage, limit: 118 lb }]",
      ].join("\n"),
    });
    const titles = titlesFor("loading-made-illegal", begun);
    expect(titles.filter((title) => title.startsWith("Make the ballast at nose-ballast"))).toHaveLength(1);
    expect(titles.filter((title) => title.startsWith("Placard aft-baggage at"))).toHaveLength(1);
    for (const { text } of remediesFor("loading-made-illegal", begun)) {
      expect(text.match(/station: nose-ballast/g)).toHaveLength(1);
      expect(faultsIn(text)).toEqual([]);
    }
  });

  test("goes only to arms that the mounts permit, where these are listed", () => {
    const listed = farAft.replace(
      "arm: 160.0 in",
      "arm: 160.0 in, alternatives: [152.0 in, 140.0 in, 90.0 in]",
    );
    expect(titlesFor("loading-made-illegal", listed)[0]).toBe("Move RACK to 140 in");
  });

  test("takes two changes where no one of them is enough", () => {
    const heavy = everyLoadingExample({ rack: "170 lb", arm: "160.0 in" })
      .replace("arm: 160.0 in", "arm: 160.0 in, alternatives: [120.0 in]")
      .replace("arm: -20.0 in, limit: 30 lb", "arm: -20.0 in, limit: 40 lb");
    const titles = titlesFor("loading-made-illegal", heavy);
    expect(titles.length).toBeGreaterThan(0);
    for (const title of titles) expect(title).toMatch(/^Move RACK to 120 in and (add|placard) /);
  });
});

describe("a loading past a limit to the side", () => {
  // 60 lb at butt line 110 in on 2412 lb: 2.67 in to the right of the centreline, with nobody but the crew aboard.
  const wing = everyLoadingExample({ rack: "60 lb", butt: "110 in" });
  const rule = "lateral-cg-beyond-limit";

  test("is mended by a move toward the centreline, or by a placard where the load is to that side", () => {
    expect(titlesFor(rule, wing)).toEqual([expect.stringMatching(/^Move RACK to butt line [0-9.]+ in$/)]);
    for (const { text } of remediesFor(rule, wing)) expect(faultsIn(text)).toEqual([]);
  });

  test("goes to the farthest butt line that keeps the limit: one step more and it is passed again", () => {
    const [title] = titlesFor(rule, wing);
    const to = Number(/line ([0-9.]+) in/.exec(title!)![1]);
    // The lightest permitted loading: 2412 + 60 lb and a crew of 170 lb on the centreline; limit 2 in.
    expect(to).toBeCloseTo(Math.floor(((2 * (2412 + 60 + 170)) / 60) * 10) / 10, 9);
    const farther = wing.replace("butt-line: 110 in", `butt-line: ${to + 0.1} in`);
    expect(faultsIn(farther)).toContain(rule);
  });

  test("is mended by ballast on the other side, where a station for it stands there", () => {
    const withStation = wing.replace("limit: 30 lb }", "limit: 30 lb, butt-line: -60 in }");
    const titles = titlesFor(rule, withStation);
    expect(titles).toEqual([
      expect.stringMatching(/^Move RACK to butt line /),
      expect.stringMatching(/^Add [0-9.]+ lb of ballast at nose-ballast$/),
    ]);
    const pounds = Number(/Add ([0-9.]+) lb/.exec(titles[1]!)![1]);
    // By hand: (60 x 110 - 60 w) / (2642 + w) = 2 at w = (6600 - 5284) / 62 = 21.226 lb, rounded up.
    expect(pounds).toBe(21.3);
    for (const { text } of remediesFor(rule, withStation)) expect(faultsIn(text)).toEqual([]);
  });

  test("is mended by a placard where the load stands to that side", () => {
    const baggage = everyLoadingExample({ rack: "30 lb", butt: "60 in" }).replace(
      "limit: 120 lb, butt-line: 0 in",
      "limit: 120 lb, butt-line: 55 in",
    );
    const titles = titlesFor(rule, baggage);
    expect(titles.some((title) => /^Placard aft-baggage at [0-9]+ lb$/.test(title))).toBe(true);
    for (const { text } of remediesFor(rule, baggage)) expect(faultsIn(text)).toEqual([]);
  });

  test("offers no other butt line where the mounts list the places that they permit", () => {
    const listed = wing.replace("arm: 92.0 in", "arm: 92.0 in, alternatives: [95.0 in]");
    expect(titlesFor(rule, listed)).toEqual([]);
  });
});
