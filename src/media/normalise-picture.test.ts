// All pictures are made here, with sharp or byte by byte.
import { createHash } from "node:crypto";
import { crc32 as nodeCrc32, deflateSync } from "node:zlib";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { normalisePicture, PICTURE_LIMITS } from "./normalise-picture.ts";
