// What is shown while something is worked out, and a way to stop it.

/** A bar that tells no share, since nobody knows how long it takes. */
export function Working({ words, stop }: { readonly words: string; readonly stop: () => void }) {
  return (
    <div className="working">
      <progress aria-label={words} />
      <p className="row">
        <span role="status">{words}</span>
        <button type="button" onClick={stop}>
          Stop
        </button>
      </p>
    </div>
  );
}
