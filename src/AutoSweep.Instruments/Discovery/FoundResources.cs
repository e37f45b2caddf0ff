namespace AutoSweep.Instruments.Discovery;

/// <summary>What a search found.</summary>
/// <param name="Resources">The resources: USB instruments, serial ports, then what only VISA knows.</param>
/// <param name="Notes">What could not be searched, and why.</param>
public sealed record FoundResources(IReadOnlyList<FoundResource> Resources, IReadOnlyList<string> Notes);
