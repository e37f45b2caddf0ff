namespace AutoSweep.Core.Peaks;

/// <summary>A reading in a search's trace and whether the fit used it.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Used">False when it was set aside as unsettled or as an outlier.</param>
public sealed record PeakTracePoint(PeakReading Reading, bool Used);
