// Pictures are described and have a source.
import type { Fact } from "../../facts/fact.ts";
import type { Remark } from "../note.ts";

/** `undescribed-picture`: no description, or neither a source of its own nor the fact's. */
export function undescribedPicture(fact: Fact): readonly Remark[] {
  if (fact.picture === null) return [];
  const described = fact.pictureAlt.trim() !== "";
  const sourced = fact.pictureSource.trim() !== "" || fact.source.trim() !== "";
  if (described && sourced) return [];
  const missing = [described ? "" : "description", sourced ? "" : "source"].filter((one) => one !== "").join(" or ");
  return [
    {
      rule: "undescribed-picture",
      angle: null,
      message: `The picture has no ${missing}.`,
      about: `${fact.picture} ${missing}`,
      fix: null,
    },
  ];
}
