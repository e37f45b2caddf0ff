using AutoSweep.Core.Matching;

namespace AutoSweep.Core.Journal;

/// <summary>Parts of the stock were matched to the swept outputs and reserved for them.</summary>
public sealed record PartsMatched : JournalEvent
{
    /// <summary>The ledger that holds the parts.</summary>
    public required string Ledger { get; init; }

    /// <summary>The number of the ledger's entry that reserved them.</summary>
    public required long LedgerSequence { get; init; }

    /// <summary>Every output that was to be matched, in ascending number.</summary>
    public required IReadOnlyList<OutputMatched> Outputs { get; init; }

    /// <summary>The loss limit in decibels.</summary>
    public required double LossLimitDecibels { get; init; }

    /// <summary>Outputs outside the limit, reached and proven.</summary>
    public required LevelProof Outside { get; init; }

    /// <summary>Parts used, reached and proven.</summary>
    public required LevelProof PartsUsed { get; init; }

    /// <summary>Parts moved since the match before, reached and proven.</summary>
    public required LevelProof Moved { get; init; }

    /// <summary>Total expected loss in units of 10⁻⁷ dB, reached and proven.</summary>
    public required LevelProof TotalLoss { get; init; }

    /// <summary>The seed of the search.</summary>
    public required int Seed { get; init; }
}
