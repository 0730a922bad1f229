/** A UUID version 7 (RFC 9562). Uses getRandomValues, which plain http has, unlike randomUUID. */
export function uuid7(now: number = Date.now(), fill: (bytes: Uint8Array<ArrayBuffer>) => void = b => { crypto.getRandomValues(b); }): string {
  const bytes = new Uint8Array(16);
  fill(bytes);
  let rest = now;
  for (let i = 5; i >= 0; i--) {
    bytes[i] = rest % 256;
    rest = Math.floor(rest / 256);
  }
  bytes[6] = 0x70 | (bytes[6]! & 0x0f);
  bytes[8] = 0x80 | (bytes[8]! & 0x3f);
  const hex = Array.from(bytes, b => b.toString(16).padStart(2, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}
