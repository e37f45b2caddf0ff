using AutoSweep.Core.Peaks;

namespace AutoSweep.Worker.ByHand;

/// <summary>What a search by hand found.</summary>
/// <param name="Result">The answer, in true picofarads as far as they are known.</param>
/// <param name="BoxOffsetPicofarads">What the box measured at the end, less what its dials said; none where nobody measured it.</param>
public sealed record TypedAnswer(PeakResult Result, long? BoxOffsetPicofarads);
