using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Curve;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.History;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Page.Shared;

namespace AutoSweep.Worker.Page.Jobs;

/// <summary>What a person asks of the shop's own curve.</summary>
public sealed record ShopCurveWish
{
    private const int LongestName = 80;

    /// <summary>The generator's name as its profile says it; empty where all finished jobs are of one kind.</summary>
    public string Generator { get; set; } = "";

    /// <summary>What the curve is called.</summary>
    public string Name { get; set; } = "the shop's own curve";

    /// <summary>The tolerance in decibels where the jobs scatter less, as typed.</summary>
    public string LeastTolerance { get; set; } = TargetCurve.UsualToleranceDecibels.ToString(CultureInfo.InvariantCulture);

    /// <summary>Draws the curve.</summary>
    /// <exception cref="BenchFaultException">A field that cannot be used, no finished job, or several kinds of generator and none named.</exception>
    public TargetCurve Draw(JobShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        var name = TypedField.Text(Name, "the name of the curve", LongestName);
        var least = TypedField.Number(LeastTolerance,
            "the least tolerance in dB", TargetPoint.LeastToleranceDecibels, TargetPoint.MostToleranceDecibels);
        var kinds = KindsIn(shelf);
        if (kinds.Count == 0)
            throw new BenchFaultException(BenchFault.StageNotReady, "no finished job in the data folder", "a job with a complete survey as left",
                "finish a job first: its survey as left makes it a model for the next");
        return FinishedJobs.Draw(shelf, kinds.Contains(Generator) ? Generator : kinds.Count == 1 ? null : throw new BenchFaultException(
            BenchFault.BadFile, $"finished jobs of {kinds.Count} kinds of generator", "one kind", "choose one of the list"), name, least);
    }

    /// <summary>The kinds of generator of which a job is finished.</summary>
    public static IReadOnlyList<string> KindsIn(JobShelf shelf)
    {
        ArgumentNullException.ThrowIfNull(shelf);
        return [.. shelf.Jobs.Where(job => JobSummary.Of(job).IsFinished).Select(job => job.State.Profile!.Name)
            .Distinct().Order(StringComparer.Ordinal)];
    }

    /// <summary>Chooses a drawn curve for the job on the bench, as far as its generator has the outputs.</summary>
    /// <exception cref="BenchFaultException">Its generator has none of them.</exception>
    public static TargetCurve Choose(JobRecord record, TargetCurve curve)
    {
        ArgumentNullException.ThrowIfNull(record);
        var known = record.Profile.Outputs.Select(output => output.Number).ToHashSet();
        var fitting = curve with { Points = [.. curve.Points.Where(point => known.Contains(point.Output))] };
        return fitting.Points.Count > 0 ? TargetChoice.Choose(record, _ => fitting) : throw new BenchFaultException(
            BenchFault.BadFile, $"no output of {record.Profile.Name} in the curve", "a curve of the same kind of generator", "draw one of that kind");
    }
}
