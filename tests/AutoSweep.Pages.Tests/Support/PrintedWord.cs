namespace AutoSweep.Pages.Tests.Support;

/// <summary>A word on a printed sheet.</summary>
/// <param name="Left">Where it begins, in millimetres from the sheet's left edge.</param>
/// <param name="Right">Where it ends.</param>
/// <param name="Text">The word.</param>
internal sealed record PrintedWord(double Left, double Right, string Text);
