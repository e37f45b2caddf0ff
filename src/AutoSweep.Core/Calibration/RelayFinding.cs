namespace AutoSweep.Core.Calibration;

/// <summary>Something that a calibration found wrong.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Relay">The relay, from 1; null where no single one can be named.</param>
/// <param name="Evidence">The figures that show it, for the person at the bench.</param>
public sealed record RelayFinding(RelayFindingKind Kind, int? Relay, string Evidence);
