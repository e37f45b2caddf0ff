namespace AutoSweep.Sim.Benches;

/// <summary>What a perfect job would find at one output, at nominal mains and after warm-up.</summary>
internal sealed record OutputTruth
{
    public required int Output { get; init; }

    /// <summary>The tone heard at this terminal.</summary>
    public required double ToneHertz { get; init; }

    /// <summary>The tone's level with the aged capacitor in, in millivolts rms at the terminal.</summary>
    public required double AsFoundMillivolts { get; init; }

    /// <summary>Of a filtered output: where it is loudest.</summary>
    public PeakTruth? Peak { get; init; }
}
