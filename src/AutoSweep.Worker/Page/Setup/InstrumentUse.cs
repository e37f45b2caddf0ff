namespace AutoSweep.Worker.Page.Setup;

/// <summary>A person's choice of what an instrument that was found is for.</summary>
/// <param name="Role">What it is for.</param>
/// <param name="Resource">Its resource name.</param>
/// <param name="Driver">The driver that is proposed by its identity; none where nothing is known.</param>
public sealed record InstrumentUse(InstrumentRole Role, string Resource, string? Driver);
