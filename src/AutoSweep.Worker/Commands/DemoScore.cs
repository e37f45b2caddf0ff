using System.Text.Json;
using System.Text.Json.Serialization;

namespace AutoSweep.Worker.Commands;

/// <summary>The simulator's own comparison of a finished job with its truth, as it prints it.</summary>
/// <param name="Outputs">Each planned output.</param>
/// <param name="NotPlanned">Outputs that the job has and the simulated generator has no filter for.</param>
/// <param name="Flags">Each output with a planted fault, or flagged without one.</param>
/// <param name="Surveyed">How many outputs the survey has once each.</param>
/// <param name="Good">Whether every planned output is there once and within the limit.</param>
/// <param name="WorstErrorInHalfWidths">The largest error of a peak.</param>
/// <param name="WorstLossDecibels">The most level lost at a found peak.</param>
/// <param name="MedianReadings">The median number of readings a peak took.</param>
public sealed record DemoScore(
    IReadOnlyList<DemoOutputScore> Outputs,
    IReadOnlyList<int> NotPlanned,
    IReadOnlyList<DemoFlagScore> Flags,
    int Surveyed,
    bool Good,
    double WorstErrorInHalfWidths,
    double WorstLossDecibels,
    double MedianReadings)
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web)
    {
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
    };

    /// <summary>Reads what the simulator printed.</summary>
    public static DemoScore Parse(string json) => JsonSerializer.Deserialize<DemoScore>(json, Json)!;
}
