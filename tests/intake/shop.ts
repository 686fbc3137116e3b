import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const days = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

/** A shop that can do every shipped recipe, with no piece in it. */
export const shopText = (units: 'metric' | 'us', currency: string) => `name: Lock Street workshop
time-zone: Europe/Dublin
units: ${units}
currency: ${currency}
opening:
${days.map((day) => `  ${day}: 08:00-18:00`).join('\n')}
rooms:
  workshop: { air: { constant: { temp: 20 °C, rh: 50 % } } }
stations:
  bench: { room: workshop, kind: bench, slots: 3 }
  floor: { room: workshop, kind: floor, slots: 6 }
  rack: { room: workshop, kind: rack, slots: 6 }
  spray: { room: workshop, kind: spray, slots: 3 }
tools:
  sprayer: { count: 1 }
  sander: { count: 1 }
  clamps: { count: 2 }
hands:
  owner: { skills: [spray, lift] }
  helper: { skills: [lift] }
`;

/** A folder with that shop; it is taken away after `use`. */
export async function inEmptyShop<T>(shop: string, use: (folder: string) => Promise<T> | T): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'drybench-intake-'));
  try {
    mkdirSync(join(folder, 'pieces'));
    writeFileSync(join(folder, 'shop.yaml'), shop);
    return await use(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
