// Ways of finding what came with a list that was written for a test.
import type { FindMedia } from "../../src/exchange/list-media.ts";

/** Finds pictures as told, and no sounds. */
export const findingPictures = (picture: FindMedia["picture"]): FindMedia => ({ picture, sound: () => null });

/** Finds nothing. */
export const FIND_NOTHING: FindMedia = findingPictures(() => null);
