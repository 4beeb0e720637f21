// Time zones by name.

/** Whether this program knows a time zone by that name. */
export function isZone(zone: string): boolean {
  try {
    return zone !== '' && Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone !== '';
  } catch {
    return false;
  }
}
