// Asks the server for one sheet of the kit, drawn by what will print it.
import { keepPreviousData, type UseQueryResult, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import type { KitPreview } from "../../../app/print-views.ts";
import { api, type KitOrder } from "../../client.ts";
import { KEYS } from "../../data/queries.ts";
import { useDebounced } from "../../data/use-debounced.ts";

const TYPING_MS = 300;
/** A drawn sheet may take megabytes, so it is soon forgotten. */
const KEEP_MS = 30_000;

/** The sheet that is looked at, and how to look at another. */
export interface PreviewState {
  readonly preview: UseQueryResult<KitPreview>;
  /** The sheet that is wanted, counted from 0: ahead of the preview for as long as that is on its way. */
  readonly sheet: number;
  /** Looks at a sheet, counted from 0. */
  readonly look: (sheet: number) => void;
  /** Whether the preview is that of the order as it is now. */
  readonly fresh: boolean;
}

/** Previews an order; one that is null cannot be printed as it is. */
export function usePreview(order: KitOrder | null): PreviewState {
  const [wanted, look] = useState(0);
  const settled = useDebounced(JSON.stringify(order), TYPING_MS);
  const kit = JSON.parse(settled) as KitOrder | null;
  const preview = useQuery({
    queryKey: [...KEYS.kit, "preview", settled, wanted],
    queryFn: ({ signal }) => api.previewKit(kit as KitOrder, wanted, signal),
    enabled: kit !== null,
    placeholderData: keepPreviousData,
    gcTime: KEEP_MS,
    retry: false,
  });
  const last = Math.max(0, sheetCount(preview.data?.parts ?? []) - 1);
  const fresh = preview.isSuccess && !preview.isPlaceholderData && settled === JSON.stringify(order);
  return { preview, sheet: Math.min(wanted, last), look, fresh };
}

/** Sheets of the box that is looked at. */
export const sheetCount = (parts: readonly { readonly sheets: number }[]): number =>
  parts.reduce((sum, { sheets }) => sum + sheets, 0);
