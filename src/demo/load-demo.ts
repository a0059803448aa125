// Bringing the demo into an empty Longhold, and clearing it away again.
import { stockPlacement } from "../app/box-cards.ts";
import { createSubject, saveNewFacts } from "../app/facts.ts";
import { FailureError } from "../app/failure.ts";
import type { Context, PictureRecord, Session, SoundRecord } from "../app/ports.ts";
import { rebuildSittings } from "../app/rebuild.ts";
import { boxFrom } from "../app/set-up.ts";
import { foldLog } from "../core/box/fold-log.ts";
import { cardId } from "../core/cards/cards.ts";
import { batches } from "../core/lists.ts";
import type { SetUpEntry } from "../core/log/entry.ts";
import type { Result } from "../core/result.ts";
import { tallySittings } from "../core/sitting/sitting-tally.ts";
import { buildDemoBox, type DemoBox } from "./demo-box.ts";
import { DEMO_SPELLING } from "./kind-facts.ts";
import { demoDrawings, demoSounds } from "./sky-facts.ts";

/** How the bytes of a picture or a sound become what is stored. */
export interface DemoMedia {
  readonly picture: (bytes: Uint8Array) => Promise<Result<PictureRecord, string>>;
  readonly sound: (bytes: Uint8Array) => Result<SoundRecord, string>;
}

/** What was brought in. */
export interface DemoCounts {
  readonly facts: number;
  readonly cards: number;
  readonly pictures: number;
  readonly entries: number;
}

/** Fills an empty Longhold with the observatory demo. Fails with `conflict` if there is anything already. */
export async function loadDemo(context: Context, media: DemoMedia, timeZone: string): Promise<DemoCounts> {
  await context.store.read(refuseUnlessEmpty);
  const pictures = new Map(
    await Promise.all(
      demoDrawings().map(async ({ name, svg }) => {
        const picture = await media.picture(new TextEncoder().encode(svg));
        if (!picture.ok) throw new Error(`the demo drawing of ${name} was refused: ${picture.error}`);
        return [name, picture.value] as const;
      }),
    ),
  );
  const sounds = new Map(
    demoSounds().map(({ name, bytes }) => {
      const sound = media.sound(bytes);
      if (!sound.ok) throw new Error(`the demo sound of ${name} was refused: ${sound.error}`);
      return [name, sound.value] as const;
    }),
  );
  const hashes = { pictures: hashesOf(pictures), sounds: hashesOf(sounds) };
  const demo = buildDemoBox({ now: context.clock(), timeZone, hashes });
  return context.store.write(async (session) => {
    await refuseUnlessEmpty(session);
    for (const picture of pictures.values()) await session.library.addPicture(picture);
    for (const sound of sounds.values()) await session.library.addSound(sound);
    await createSubject(session, demo.subjectId, demo.subjectName, { demo: true, spelling: DEMO_SPELLING });
    const cards = await saveNewFacts(session, demo.facts);
    await saveHistory(session, demo);
    return { facts: demo.facts.length, cards, pictures: pictures.size, entries: demo.entries.length };
  });
}

const hashesOf = (named: ReadonlyMap<string, { readonly hash: string }>): ReadonlyMap<string, string> =>
  new Map([...named].map(([name, { hash }]) => [name, hash]));

/**
 * Clears the demo away. The box goes with it, unless the learner has brought subjects of their own: then
 * it stays, with their cards and answers. Does nothing if there is no demo.
 */
export const clearDemo = (context: Context): Promise<void> =>
  context.store.write(async (session) => {
    const subjects = await session.library.subjects();
    const demos = subjects.filter((subject) => subject.demo);
    const box = await session.boxes.box();
    if (box && demos.length > 0) {
      if (demos.length === subjects.length) await session.boxes.removeBox(box.id);
      else {
        for (const demo of demos) await session.boxes.forgetSubject(box.id, demo.id);
        await rebuildSittings(session, box);
      }
    }
    for (const demo of demos) await session.library.removeSubject(demo.id);
  });

async function refuseUnlessEmpty({ library, boxes }: Session): Promise<void> {
  if ((await library.subjects()).length === 0 && (await boxes.box()) === null) return;
  throw new FailureError(
    "conflict",
    "There is something in this Longhold already. The demo needs an empty one: choose another data folder.",
  );
}

/** Stores a log together with everything that is cached from it. */
async function saveHistory({ boxes }: Session, demo: DemoBox): Promise<void> {
  const setUp = demo.entries.find((entry): entry is SetUpEntry => entry.kind === "set-up");
  if (!setUp) throw new Error("the demo has no box");
  const box = boxFrom(setUp);
  await boxes.saveBox(box);
  await boxes.addSubjectToBox(box.id, demo.subjectId);
  for (const batch of batches(demo.entries, 500)) await boxes.appendEntries(batch);
  const states = foldLog(demo.entries);
  const placements = demo.facts.flatMap((fact) =>
    fact.angles.map((angle) => {
      const fresh = stockPlacement(box, { id: cardId(fact.id, angle), fact: fact.id });
      return { ...fresh, state: states.get(fresh.card) ?? fresh.state };
    }),
  );
  await boxes.addPlacements(box.id, placements);
  for (const tally of tallySittings(demo.entries)) await boxes.saveSitting(box.id, tally);
}
