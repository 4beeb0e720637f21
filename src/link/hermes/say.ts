// All that is ever sent to a machine: who we are, that we are there, and whether it is. Nothing here changes anything at a machine.
// Field names: hermes-org/lib_cpp f7cf267d, src/Hermes/MessageSerialization.cpp and SenderEnvelope.cpp.

/** The version of the standard whose words are used. */
const VERSION = '1.6';

/** Dated by this computer's local time without a zone, as the standard has it. */
function envelope(inside: string, wallMs: number): string {
  const localMs = wallMs - new Date(wallMs).getTimezoneOffset() * 60_000;
  return `<Hermes Timestamp="${new Date(localMs).toISOString().slice(0, -1)}">${inside}</Hermes>`;
}

function quoted(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

/** Who we are: a system that listens to boards and answers whether it is there. */
export function describeUs(name: string, wallMs: number): string {
  const features = '<FeatureCheckAliveResponse/><FeatureBoardTracking/>';
  return envelope(
    `<SupervisoryServiceDescription SystemId="${quoted(name)}" Version="${VERSION}"><SupportedFeatures>${features}</SupportedFeatures></SupervisoryServiceDescription>`,
    wallMs,
  );
}

/** Are you there? Without a number: a word that wants no answer. */
export function askAlive(id: number | null, wallMs: number): string {
  return envelope(id === null ? '<CheckAlive/>' : `<CheckAlive Type="1" Id="${id}"/>`, wallMs);
}

/** We are there; `id` as it was asked. */
export function stillHere(id: string | null, wallMs: number): string {
  return envelope(
    id === null ? '<CheckAlive Type="2"/>' : `<CheckAlive Type="2" Id="${quoted(id.slice(0, 100))}"/>`,
    wallMs,
  );
}
