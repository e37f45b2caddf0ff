using AutoSweep.Core.Matching;
using AutoSweep.Sources.Matching;

namespace AutoSweep.Benchmarks.Matching;

/// <summary>One published assignment problem, solved by the packing solver.</summary>
/// <param name="Instance">The problem.</param>
/// <param name="Profit">What was reached.</param>
/// <param name="Proven">Whether it was proven to be the best.</param>
/// <param name="Seconds">What it took.</param>
internal sealed record AssignmentRun(AssignmentInstance Instance, long Profit, bool Proven, double Seconds)
{
    public static IReadOnlyList<AssignmentRun> All(TimeProvider time) =>
        [.. AssignmentInstance.Read(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "or_library_gap.json")))
            .Select(instance => Of(instance, time))];

    private static AssignmentRun Of(AssignmentInstance instance, TimeProvider time)
    {
        var began = time.GetTimestamp();
        var solution = new PackingSolver(instance.AsPacking(), new(), time).Solve(CancellationToken.None)!;
        return new(instance, -solution.Levels[0].Value, solution.Levels[0].IsProven, time.GetElapsedTime(began).TotalSeconds);
    }
}
