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
