namespace AutoSweep.Instruments.Links;

/// <summary>A VISA resource name (VPP-4.3, section 4.3): which instrument, over which kind of link.</summary>
/// <param name="Text">The name as written.</param>
public sealed record ResourceName(string Text);
