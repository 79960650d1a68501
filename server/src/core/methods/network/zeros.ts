/**
 * Lists of zeros, each of its length. They stand in one piece of memory: to ask for many small ones is dearer than
 * what is done with them.
 */
export function zeros<Name extends string>(
  lengths: Readonly<Record<Name, number>>,
): Readonly<Record<Name, Float64Array>> {
  let all = 0;
  for (const name in lengths) all += lengths[name];
  const { buffer } = new Float64Array(all);
  const lists = {} as Record<Name, Float64Array>;
  let from = 0;
  for (const name in lengths) {
    lists[name] = new Float64Array(buffer, from, lengths[name]);
    from += lists[name].byteLength;
  }
  return lists;
}
