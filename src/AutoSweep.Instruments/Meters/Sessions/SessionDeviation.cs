namespace AutoSweep.Instruments.Meters.Sessions;

/// <summary>Where a driver left the words of a session.</summary>
/// <param name="LineNumber">The session's line, from 1.</param>
/// <param name="Found">What the driver did.</param>
/// <param name="Expected">What the session has.</param>
internal sealed record SessionDeviation(int LineNumber, string Found, string Expected);
