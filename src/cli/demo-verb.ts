// longhold demo: the observatory box.
import { loadDemo } from "../demo/load-demo.ts";
import { normalisePicture } from "../media/normalise-picture.ts";
import { storeSound } from "../media/store-sound.ts";
import { DATA_OPTION, JSON_OPTION, printJson, type Verb, writing } from "./verb.ts";

/** Builds the demo in an empty data folder. */
export const demoVerb: Verb = {
  name: "demo",
  about: "fill an empty data folder with the night sky and forty days of practice",
  options: { data: DATA_OPTION, json: JSON_OPTION },
  async run(call) {
    const timeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
    const counts = await writing(call, (context) =>
      loadDemo(context, { picture: normalisePicture, sound: storeSound }, timeZone),
    );
    if (call.values.json) printJson(call, counts);
    else
      call.out(
        `${counts.facts} facts, ${counts.cards} cards, ${counts.pictures} pictures, ${counts.entries} log entries. longhold serve opens it.\n`,
      );
    return 0;
  },
};
