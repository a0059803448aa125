// Handing a text to the reader as a file.

/** Lets the browser save a text under a name. */
export function saveFile(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The download has begun by the next turn.
  setTimeout(() => URL.revokeObjectURL(url));
}
