/** Calls `then` at each Ctrl-C, with how many there have been. @returns what lets go again; then the process ends as ever. */
export function onInterrupt(then: (times: number) => void): () => void {
  let times = 0;
  const heard = () => {
    times += 1;
    then(times);
  };
  process.on('SIGINT', heard);
  return () => process.off('SIGINT', heard);
}
