using AutoSweep.Sim.Benches;

namespace AutoSweep.Sim.Scoring;

/// <summary>A whole job against the bench's truth.</summary>
internal sealed record JobScore
{
    public required string Bench { get; init; }

    public required IReadOnlyList<OutputScore> Outputs { get; init; }

    /// <summary>Outputs in the job's file that the bench does not have among its filtered ones.</summary>
    public required IReadOnlyList<int> NotPlanned { get; init; }

    public IReadOnlyList<FlagScore> Flags { get; init; } = [];

    /// <summary>How many outputs the survey lists, once each.</summary>
    public int Surveyed { get; init; }

    /// <summary>Whether every planned output is there once and within the limit, and none besides.</summary>
    public bool Good => NotPlanned.Count == 0 && Outputs.All(output => output.Good);

    public double WorstErrorInHalfWidths => Outputs.Select(output => Math.Abs(output.ErrorInHalfWidths)).DefaultIfEmpty(0).Max();

    public double WorstLossDecibels => Outputs.Select(output => output.LossDecibels).DefaultIfEmpty(0).Max();

    public double MedianReadings
    {
        get
        {
            var sorted = Outputs.Where(output => output.Times > 0).Select(output => (double)output.Readings).Order().ToList();
            return sorted.Count == 0 ? 0 : (sorted[(sorted.Count - 1) / 2] + sorted[sorted.Count / 2]) / 2;
        }
    }
}
