/**
 * The property tests' `fast-check`: every run draws the same cases, so that a change is refused for what it
 * does and not for what was drawn. `TAILCONE_SEED=random` draws others, `TAILCONE_SEED=<number>` those again.
 */
import fc from "fast-check";

const asked = process.env.TAILCONE_SEED;
const seed = asked === undefined ? 20_240_607 : Number(asked);

fc.configureGlobal(asked === "random" ? {} : { seed });

export { fc };
