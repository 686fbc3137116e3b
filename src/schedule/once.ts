/** Makes things by name, each when first asked for and never again. */
export type Once = <T>(name: string, make: () => T) => T;

export function remembering(): Once {
  const kept = new Map<string, unknown>();
  return <T>(name: string, make: () => T): T => {
    if (!kept.has(name)) kept.set(name, make());
    return kept.get(name) as T;
  };
}
