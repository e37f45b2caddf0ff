using AutoSweep.Core.Matching;
using AutoSweep.Worker.Page.Shared;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Page.Fit;

/// <summary>How to match, as a person types it.</summary>
public sealed class MatchFields
{
    /// <summary>The expected loss that an output may have, in decibels.</summary>
    public string Limit { get; set; } = TypedField.Shown(new MatchOptions().LossLimitDecibels);

    /// <summary>The most parts in parallel.</summary>
    public string MostParts { get; set; } = "2";

    /// <summary>The rated voltage that parts must have; empty for any.</summary>
    public string Volts { get; set; } = "";

    /// <summary>The most seconds for the search.</summary>
    public string Seconds { get; set; } = "10";

    /// <summary>Whether an earlier match is forgotten.</summary>
    public bool Afresh { get; set; }

    /// <summary>How to match.</summary>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood.</exception>
    public MatchOptions Options() => new()
    {
        LossLimitDecibels = TypedField.NumberOrNone(Limit, "Loss limit", 1e-6, 10) ?? new MatchOptions().LossLimitDecibels,
        MostParts = TypedField.WholeOrNone(MostParts, "At most parts", 1, 3) ?? 2,
        TimeLimit = TimeSpan.FromSeconds(TypedField.NumberOrNone(Seconds, "Time for the search", 0.1, 3600) ?? 10),
    };

    /// <summary>What is wished.</summary>
    /// <exception cref="Core.BenchFaultException">A field cannot be understood.</exception>
    public MatchWishes Wishes() => new() { RequiredVolts = TypedField.NumberOrNone(Volts, "Rated voltage", 0, 100_000) ?? 0, Afresh = Afresh };
}
