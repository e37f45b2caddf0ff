namespace AutoSweep.Core.Magnets;

/// <summary>An output outside its tolerance whose magnet is left alone.</summary>
/// <param name="Output">Its number.</param>
/// <param name="Reason">Why, in words that go on "because".</param>
public sealed record MagnetLeftOut(int Output, string Reason);
