/** Handing a text to the pilot as a file. */
export function saveTextFile(text: string, fileName: string, type = 'application/json'): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The browser has taken its own reference once the click is handled.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
