// Where the pictures of cards are shown from: the server, or files that it does not hold yet.
import { createContext, useContext } from "react";
import { pictureUrl } from "../client.ts";

/** The address of a picture, or null if it cannot be shown; `missing` is said in its place. */
export interface PictureSource {
  readonly urlOf: (hash: string) => string | null;
  readonly missing: string;
}

/** Set around cards whose pictures the server does not hold yet. */
export const PictureContext = createContext<PictureSource>({ urlOf: pictureUrl, missing: "picture" });

/** The source of pictures here. */
export const usePictureSource = (): PictureSource => useContext(PictureContext);
