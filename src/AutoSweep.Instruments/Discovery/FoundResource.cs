namespace AutoSweep.Instruments.Discovery;

/// <summary>Something on this computer at which an instrument may be.</summary>
/// <param name="Resource">Its resource name, as bench.json takes it.</param>
/// <param name="Description">What it is, in a few words.</param>
public sealed record FoundResource(string Resource, string Description);
