namespace AutoSweep.Worker.Parts;

/// <summary>What is known of a whole old set before any of it is measured.</summary>
/// <param name="NominalPicofarads">The value printed on all of them, in picofarads; none where they differ or cannot be read.</param>
/// <param name="MadeIn">The year in which they or their generator were made; none where it is not known.</param>
public sealed record OldSetLabel(long? NominalPicofarads, int? MadeIn);
