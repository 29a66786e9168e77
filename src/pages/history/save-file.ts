/** Offers `text` to be saved as a file of that name. */
export function saveFile(name: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], {type: 'application/json'}));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // the download has its own hold on the blob by then
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
