// Fetches the fact that is opened, or lays out a blank one.
import { useQuery } from "@tanstack/react-query";
import { type RefCallback, useCallback, useRef } from "react";
import { Link } from "wouter";
import type { SubjectView } from "../../app/views.ts";
import { api } from "../client.ts";
import { KEYS } from "../data/queries.ts";
import { Loaded } from "../shell/states.tsx";
import { FactEditor } from "./fact-editor.tsx";
import { workshopAddress } from "./use-place.ts";

/** The editor beside the list. `id` is "new" for a fact to be written. */
export function EditorPanel({ id, subject }: { readonly id: string; readonly subject: SubjectView | null }) {
  const isNew = id === "new";
  const title = useArrival();
  const fact = useQuery({
    queryKey: [...KEYS.fact, id],
    queryFn: () => api.fact(id),
    enabled: !isNew,
    refetchOnWindowFocus: false,
  });
  if (isNew) return <FactEditor before={null} subject={subject} title={title} />;
  return (
    <div className="editor-place">
      <Loaded query={fact} what="the fact" otherwise={<BackToFacts subject={subject} />}>
        {/* A fact changed elsewhere starts a fresh editor. */}
        {(found) => <FactEditor key={JSON.stringify(found)} before={found} subject={subject} title={title} />}
      </Loaded>
    </div>
  );
}

/** Focuses the editor's title once: opening a fact leads to it, also where it lies below the list. */
function useArrival(): RefCallback<HTMLHeadingElement> {
  const arrived = useRef(false);
  return useCallback((title) => {
    if (!title || arrived.current) return;
    arrived.current = true;
    if (document.activeElement?.tagName !== "H1") title.focus();
  }, []);
}

const BackToFacts = ({ subject }: { readonly subject: SubjectView | null }) => (
  <p>
    <Link href={workshopAddress({ subject: subject?.id ?? null, fact: null })}>Back to the facts</Link>
  </p>
);
