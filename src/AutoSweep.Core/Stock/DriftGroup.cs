namespace AutoSweep.Core.Stock;

/// <summary>How far old capacitors of one kind had drifted from their printed value.</summary>
/// <param name="Key">The kind: nominal picofarads, or years of age at the lower end of a decade; none where it is not known.</param>
/// <param name="Count">How many were logged.</param>
/// <param name="Failed">How many of them did not measure as a capacitor any more.</param>
/// <param name="Jobs">From how many jobs.</param>
/// <param name="MedianPercent">The median drift of those with a measured and a printed value; none where there is none.</param>
/// <param name="ScatterPercent">Their robust scatter, one standard deviation; none with fewer than three.</param>
/// <param name="LeastPercent">The smallest drift.</param>
/// <param name="MostPercent">The largest drift.</param>
public sealed record DriftGroup(
    long? Key, int Count, int Failed, int Jobs, double? MedianPercent, double? ScatterPercent, double? LeastPercent, double? MostPercent);
