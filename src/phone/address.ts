import type { NetworkInterfaceInfo } from 'node:os';

export type Interfaces = Readonly<
  Record<string, readonly Pick<NetworkInterfaceInfo, 'address' | 'family' | 'internal'>[] | undefined>
>;

/** 10/8, 172.16/12 and 192.168/16: networks of a home or a shop, RFC 1918 section 3. */
export function isPrivate(address: string): boolean {
  const [a = -1, b = -1] = address.split('.').map(Number);
  return a === 10 || (a === 172 && b >= 16 && b <= 31) || (a === 192 && b === 168);
}

/** Interfaces of virtual machines and containers come after those of real cards. */
const isVirtual = (name: string) => /^(docker|br-|veth|virbr|vmnet|vbox|tun|tap|wg|utun)/i.test(name);

/** The one address under which a phone in the same network finds this machine; undefined without a network. */
export function lanAddress(interfaces: Interfaces): string | undefined {
  const found = Object.entries(interfaces).flatMap(([name, addresses = []]) =>
    addresses.filter((a) => a.family === 'IPv4' && !a.internal && isPrivate(a.address)).map((a) => ({ name, ...a })),
  );
  return (found.find((a) => !isVirtual(a.name)) ?? found[0])?.address;
}
