namespace AutoSweep.Core.Journal;

/// <summary>Parts were measured and fitted at an output.</summary>
public sealed record OutputFitted : JournalEvent
{
    /// <summary>The output's number.</summary>
    public required int Output { get; init; }

    /// <summary>The ids of the parts.</summary>
    public required IReadOnlyList<string> Parts { get; init; }

    /// <summary>What they measured together before they were soldered in, in picofarads.</summary>
    public required long MeasuredPicofarads { get; init; }

    /// <summary>The standard uncertainty of that value in picofarads.</summary>
    public required double StandardUncertaintyPicofarads { get; init; }

    /// <summary>Their dissipation factor together; none where the meter does not tell.</summary>
    public double? Dissipation { get; init; }

    /// <summary>What the output wants at nominal mains, in picofarads.</summary>
    public required long WantedPicofarads { get; init; }

    /// <summary>The expected loss in decibels.</summary>
    public required double LossDecibels { get; init; }

    /// <summary>The meter; none for a typed value.</summary>
    public string? Meter { get; init; }

    /// <summary>The number of the ledger's entry that fitted them.</summary>
    public required long LedgerSequence { get; init; }
}
