// Time zones as they are typed.

/** The zone that was meant: its name in any case, with spaces, or a city that is one zone's alone; else as typed. */
export function readZone(typed: string, zones: readonly string[]): string {
  const text = typed.trim();
  const plain = text.toLowerCase().replace(/\s+/g, '_');
  const whole = zones.find((z) => z.toLowerCase() === plain);
  if (whole) return whole;
  const city = zones.filter((z) => z.toLowerCase().endsWith(`/${plain}`));
  return city.length === 1 && city[0] ? city[0] : text;
}
