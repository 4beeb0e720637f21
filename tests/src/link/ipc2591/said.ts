// Messages as a machine of IPC-2591 writes them, by hand from the fields that its organisation publishes: IPCConnectedFactoryExchange/CFX
// on GitHub (Apache-2.0), CFX/CFXEnvelope.cs for the envelope, the class of each message for its body. Names and values are invented.

/** `HH` of a message: 2026-03-02T06:00:00 with seven digits of a second, as the published example has them. */
export const START_MS = Date.UTC(2026, 2, 2, 6);

let count = 0;

/** An envelope (CFX/CFXEnvelope.cs:22-33). */
export function envelope(name: string, body: object, more: Record<string, unknown> = {}) {
  count += 1;
  return {
    MessageName: `CFX.${name}`,
    Version: '1.7',
    TimeStamp: stampOf(START_MS),
    UniqueID: `6f1c9a52-0000-4000-8000-${String(count).padStart(12, '0')}`,
    Source: 'L1.Placer',
    Target: null,
    RequestID: null,
    MessageBody: { $type: `CFX.${name}, CFX`, ...body },
    ...more,
  };
}

/** A moment with seven digits of a second and its zone. */
export const stampOf = (ms: number) => new Date(ms).toISOString().replace(/\.(\d{3})Z$/, '.$16900+00:00');

/** CFX/Heartbeat.cs:22. */
export const heartbeat = (frequency = '00:01:00', more = {}) =>
  envelope('Heartbeat', { CFXHandle: 'L1.Placer', HeartbeatFrequency: frequency }, more);

/** CFX/Production/WorkStarted.cs:92. */
export const workStarted = (work: string, code: string | null, units: readonly object[] = [], more = {}) =>
  envelope(
    'Production.WorkStarted',
    {
      PrimaryIdentifier: code,
      HermesIdentifier: null,
      TransactionID: work,
      Lane: 1,
      UnitCount: units.length,
      Units: units,
    },
    more,
  );

/** CFX/Production/WorkCompleted.cs:63. */
export const workCompleted = (work: string, result = 'Completed', more = {}) =>
  envelope('Production.WorkCompleted', { TransactionID: work, Result: result }, more);

/** CFX/Production/UnitsDeparted.cs:39, CFX/Structures/UnitPosition.cs. */
export const unitsDeparted = (code: string | null, units: readonly object[] = [], more = {}) =>
  envelope(
    'Production.UnitsDeparted',
    { PrimaryIdentifier: code, HermesIdentifier: null, UnitCount: units.length, Units: units, Lane: 1 },
    more,
  );

/** A unit of a panel (CFX/Structures/UnitPosition.cs). */
export const unit = (position: number, status: string) => ({
  UnitIdentifier: `U-${position}`,
  PositionNumber: position,
  PositionName: `CIRCUIT${position}`,
  X: 0,
  Y: 0,
  Rotation: 0,
  FlipX: false,
  FlipY: false,
  Status: status,
});

/** CFX/ResourcePerformance/StationStateChanged.cs:44: states as numbers. */
export const stateChanged = (state: unknown) =>
  envelope('ResourcePerformance.StationStateChanged', {
    OldState: 1100,
    OldStateDuration: '00:05:00',
    NewState: state,
    RelatedFault: null,
  });

/** CFX/ResourcePerformance/FaultOccurred.cs, Structures/Fault.cs, Structures/SMTPlacement/SMTPlacementFault.cs and SMTPlacementFaultType.cs. */
export const faultOccurred = (fault: string, more: object = {}, type = 'PickupError') =>
  envelope('ResourcePerformance.FaultOccurred', {
    Fault: {
      $type: 'CFX.Structures.SMTPlacement.SMTPlacementFault, CFX',
      Cause: 'MechanicalFailure',
      Severity: 'Warning',
      FaultCode: 'E17',
      FaultOccurrenceId: fault,
      Lane: '1',
      Stage: null,
      PlacementFaultType: type,
      ProgramStep: 12,
      Designator: { ReferenceDesignator: 'R12' },
      MaterialLocation: location('SLOT22', 'K1', 900),
      ...more,
    },
  });

/** CFX/Production/RecipeActivated.cs and its published example. */
export const recipeActivated = (name: unknown, revision: string | null = 'B', more: object = {}) =>
  envelope('Production.RecipeActivated', {
    RecipeName: name,
    Revision: revision,
    Lane: 1,
    Stage: null,
    ExpectedCycleTime: 60000,
    ExpectedUnitsPerWorkTransaction: 1,
    NumberOfComponentsPerUnit: 500,
    ...more,
  });

/** CFX/Materials/Management/MSDManagement and its published example (MaterialsRestored.cs). */
export const msd = (what: string, reels: readonly (string | null)[]) =>
  envelope(`Materials.Management.MSDManagement.${what}`, {
    Materials: reels.map((UniqueIdentifier) => ({
      UniqueIdentifier,
      InternalPartNumber: 'U-300',
      Quantity: 887,
      MaterialData: {
        $type: 'CFX.Structures.MaterialPackageMSDData, CFX',
        RemainingExposureTime: '6.00:00:00',
        MSDLevel: 'MSL3',
        MSDState: 'Exposed',
      },
    })),
  });

/** CFX/ResourcePerformance/FaultCleared.cs. */
export const faultCleared = (fault: string) =>
  envelope('ResourcePerformance.FaultCleared', { FaultOccurrenceId: fault });

/** CFX/Structures/MaterialLocation.cs:14, MaterialPackage.cs:11, SMTPlacement/SMDTapeFeeder.cs:12. */
export const location = (name: string, reel: string | null, quantity: number, more: object = {}) => ({
  LocationIdentifier: `ID-${name}`,
  LocationName: name,
  MaterialPackage: { UniqueIdentifier: reel, InternalPartNumber: 'R-100', Quantity: quantity, ...more },
  CarrierInformation: {
    $type: 'CFX.Structures.SMTPlacement.SMDTapeFeeder, CFX',
    BaseUniqueIdentifier: null,
    BaseName: null,
    LaneNumber: 1,
    TapeWidth: 8.0,
    TapePitch: 4.0,
    UniqueIdentifier: 'F-22',
    Name: 'FEEDER22',
  },
});

/** CFX/Materials/Storage/SplicePointDetected.cs:55. */
export const splicePoint = (from: string, to: string, grey = 0, more = {}) =>
  envelope(
    'Materials.Storage.SplicePointDetected',
    {
      DepletedMaterial: location('SLOT22', from, 0),
      NewlyActiveMaterial: location('SLOT22', to, 5000, { GreyZone: grey }),
    },
    more,
  );

/** CFX/Materials/Storage/MaterialsEmpty.cs:56. */
export const materialsEmpty = (reel: string) =>
  envelope('Materials.Storage.MaterialsEmpty', { EmptyMaterials: [location('SLOT22', reel, 0)] });

/** CFX/Materials/Management/MaterialsConsumed.cs:65. */
export const materialsConsumed = (reel: string, used: number, spoiled: number) =>
  envelope('Materials.Management.MaterialsConsumed', {
    ConsumedMaterials: [
      {
        MaterialLocation: location('SLOT22', reel, 344),
        QuantityUsed: used,
        QuantitySpoiled: spoiled,
        RemainingQuantity: 344,
      },
    ],
  });

/** CFX/Production/Assembly/MaterialsInstalled.cs:120. */
export const materialsInstalled = (reel: string, used: number, spoiled: number) =>
  envelope('Production.Assembly.MaterialsInstalled', {
    TransactionId: '2c24590d-39c5-4039-96a5-91900cecedfa',
    InstalledMaterials: [
      {
        UnitIdentifier: 'U-1',
        UnitPositionNumber: 1,
        QuantityInstalled: used,
        QuantityNonInstalled: spoiled,
        Material: { UniqueIdentifier: reel, InternalPartNumber: 'R-100', Quantity: 300 },
        CarrierLocation: {
          LocationIdentifier: 'ID-SLOT22',
          LocationName: 'SLOT22',
          CarrierInformation: null,
        },
        InstalledComponents: [],
        NonInstalledComponents: [],
      },
    ],
  });

/** CFX/Materials/Storage/GetLoadedMaterialsResponse.cs:75 and its published example; RequestResult: CFX/Structures/RequestResult.cs:13. */
export const loadedMaterials = (materials: unknown, more = {}, result = 'Success') =>
  envelope(
    'Materials.Storage.GetLoadedMaterialsResponse',
    { Result: { Result: result, ResultCode: 0, Message: 'SETUP OK' }, Materials: materials },
    more,
  );

/** CFX/Materials/Storage/MaterialsLoaded.cs:127. */
export const materialsLoaded = (reel: string) =>
  envelope('Materials.Storage.MaterialsLoaded', { Materials: [location('SLOT22', reel, 100)] });

/** CFX/Production/GetRequiredSetupResponse.cs:79 and its published example. */
export const requiredSetup = (rows: unknown, more = {}, result = 'Success') =>
  envelope(
    'Production.GetRequiredSetupResponse',
    {
      Result: { Result: result, ResultCode: 0, Message: 'OK' },
      RecipeName: 'BROOK-TOP',
      RecipeRevision: 'C',
      Lane: '1',
      Stage: '1',
      SetupRequirements: { Lane: '1', Stage: '1', SetupName: 'COMMON', MaterialSetupRequirements: rows },
    },
    more,
  );

/** One row of it. */
export const required = (position: string, part: string, alternates: unknown = [], makers: unknown = []) => ({
  Position: position,
  PartNumber: part,
  ApprovedAlternateParts: alternates,
  ApprovedManufacturerParts: makers,
});
