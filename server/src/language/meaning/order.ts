/** A graph of names: each with the names it reads. */
export type Needs = ReadonlyMap<string, readonly string[]>;

/**
 * The names that read themselves in the end, each with the next name on its way round. Depth first without recursion
 * (Tarjan, SIAM J. Comput. 1 (1972) 146).
 */
export function cycles(needs: Needs): ReadonlyMap<string, string> {
  const index = new Map<string, number>();
  const low = new Map<string, number>();
  const stack: string[] = [];
  const onStack = new Set<string>();
  const group = new Map<string, number>();
  let groups = 0;
  for (const root of needs.keys()) {
    if (index.has(root)) continue;
    const work: { readonly name: string; next: number }[] = [{ name: root, next: 0 }];
    while (work.length > 0) {
      const frame = work[work.length - 1]!;
      const { name } = frame;
      if (frame.next === 0) {
        index.set(name, index.size);
        low.set(name, index.get(name)!);
        stack.push(name);
        onStack.add(name);
      }
      const to = needs.get(name)![frame.next];
      if (to !== undefined) {
        frame.next++;
        if (!needs.has(to)) continue;
        if (!index.has(to)) work.push({ name: to, next: 0 });
        else if (onStack.has(to)) low.set(name, Math.min(low.get(name)!, index.get(to)!));
        continue;
      }
      work.pop();
      const above = work[work.length - 1];
      if (above !== undefined) low.set(above.name, Math.min(low.get(above.name)!, low.get(name)!));
      if (low.get(name) !== index.get(name)) continue;
      for (;;) {
        const member = stack.pop()!;
        onStack.delete(member);
        group.set(member, groups);
        if (member === name) break;
      }
      groups++;
    }
  }
  return roundTrips(needs, group);
}

function roundTrips(needs: Needs, group: ReadonlyMap<string, number>): ReadonlyMap<string, string> {
  const sizes = new Map<number, number>();
  for (const of of group.values()) sizes.set(of, (sizes.get(of) ?? 0) + 1);
  const trips = new Map<string, string>();
  for (const [name, to] of needs) {
    const own = group.get(name)!;
    const next = to.find((other) => other === name || (group.get(other) === own && sizes.get(own)! > 1));
    if (next !== undefined) trips.set(name, next);
  }
  return trips;
}

/**
 * The names so that each comes after what it reads, by alphabet where that leaves a choice; what closes a cycle is
 * passed over.
 */
export function inOrder(needs: Needs, cyclic: ReadonlyMap<string, string>): readonly string[] {
  const waiting = new Map<string, number>();
  const readers = new Map<string, string[]>();
  for (const [name, to] of needs) {
    const counted = [...new Set(to)].filter((other) => needs.has(other) && !(cyclic.has(name) && cyclic.has(other)));
    waiting.set(name, counted.length);
    for (const other of counted) {
      const list = readers.get(other);
      if (list === undefined) readers.set(other, [name]);
      else list.push(name);
    }
  }
  const ready = new NameHeap();
  for (const [name, count] of waiting) if (count === 0) ready.push(name);
  const order: string[] = [];
  for (let name = ready.pop(); name !== null; name = ready.pop()) {
    order.push(name);
    for (const reader of readers.get(name) ?? []) {
      const left = waiting.get(reader)! - 1;
      waiting.set(reader, left);
      if (left === 0) ready.push(reader);
    }
  }
  return order;
}

/** The smallest name first, in logarithmic time. */
class NameHeap {
  private readonly names: string[] = [];

  push(name: string): void {
    const { names } = this;
    let at = names.length;
    names.push(name);
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (names[parent]! <= name) break;
      names[at] = names[parent]!;
      at = parent;
    }
    names[at] = name;
  }

  pop(): string | null {
    const { names } = this;
    const first = names[0];
    const last = names.pop();
    if (first === undefined || last === undefined) return null;
    if (names.length === 0) return first;
    let at = 0;
    for (;;) {
      const left = 2 * at + 1;
      if (left >= names.length) break;
      const child = left + 1 < names.length && names[left + 1]! < names[left]! ? left + 1 : left;
      if (last <= names[child]!) break;
      names[at] = names[child]!;
      at = child;
    }
    names[at] = last;
    return first;
  }
}
