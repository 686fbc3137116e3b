/** Calls `then` at the first Ctrl-C; at the second the process ends as ever. @returns what lets go again. */
export function onInterrupt(then: () => void): () => void {
  process.once('SIGINT', then);
  return () => process.off('SIGINT', then);
}
