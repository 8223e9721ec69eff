/** Hands a text or bytes to the person as a file, by the browser's own download. */
export function saveFile({
  name,
  text,
  type,
}: {
  readonly name: string;
  readonly text: string | Uint8Array;
  readonly type?: string;
}): void {
  const address = URL.createObjectURL(new Blob([text as BlobPart], { type: type ?? "application/json" }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The download has started by the next turn; the address may then go.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
