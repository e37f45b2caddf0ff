using System.CommandLine;
using AutoSweep.Core.Curve;
using AutoSweep.Worker.Curves;
using AutoSweep.Worker.History;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Terminal;
using Spectre.Console;

namespace AutoSweep.Worker.Commands;

/// <summary>
/// <c>autosweep history</c>: what the shop's jobs say together. Reads jobs without their locks and changes none, unless a curve is chosen for one.
/// </summary>
public static class HistoryCommand
{
    /// <summary>The command.</summary>
    public static Command Build() => new("history", "What the shop's jobs say together: a list, two compared, how old capacitors drift, a target curve.")
    {
        List(),
        Compare(),
        Drift(),
        Target(),
    };

    private static Option<string> Jobs() => new("--jobs")
    {
        Description = "The folder in which the jobs' folders lie. Left out: jobs here, else jobs in the shop's data folder.",
        HelpName = "DIR",
        DefaultValueFactory = _ => JobShelf.DefaultFolder,
    };

    private static Command List()
    {
        var jobs = Jobs();
        return CurveCommand.Build("list", "Lists the jobs: outputs done in each stage, lumpiness and outputs off the target before and after.", (parsed, _) =>
        {
            HistoryText.Write(PlainWidth.Console(), JobShelf.Read(parsed.GetValue(jobs)!));
            return Task.CompletedTask;
        }, jobs);
    }

    private static Command Compare()
    {
        var (first, second, jobs) = (Job("FIRST"), Job("SECOND"), Jobs());
        var all = new Option<bool>("--all") { Description = "Also outputs of which nothing changed." };
        var (firstStand, secondStand) = (Stand("--first-stand"), Stand("--second-stand"));
        return CurveCommand.Build(
            "compare", "Compares two jobs: levels, peaks, fitted capacitance, and what changed beyond the readings' uncertainty.", (parsed, _) =>
        {
            var shelf = parsed.GetValue(jobs);
            var (one, other) = (JobShelf.Find(parsed.GetValue(first)!, shelf), JobShelf.Find(parsed.GetValue(second)!, shelf));
            var comparison = JobComparison.Of(one, other, parsed.GetValue(firstStand), parsed.GetValue(secondStand));
            HistoryText.Write(PlainWidth.Console(), one, other, comparison, parsed.GetValue(all));
            return Task.CompletedTask;
        }, first, second, jobs, all, firstStand, secondStand);
    }

    private static Argument<string> Job(string name) => new(name) { Description = "A job: its folder, or its name in the folder of jobs." };

    private static Option<CurveStand?> Stand(string name) => new(name)
    {
        Description = $"Which of its levels: {string.Join(", ", Enum.GetNames<CurveStand>())}. Left out: the latest that was read.",
        HelpName = "STAND",
    };

    private static Command Drift() => StockCommand.Build(
        "drift", "Shows how far the capacitors that were taken off had drifted, by printed value and by age, over all jobs of the stock's ledger.",
        (_, ledger, _) =>
    {
        HistoryText.WriteDrift(PlainWidth.Console(), ledger.Read());
        return Task.CompletedTask;
    });

    private static Command Target()
    {
        var file = new Argument<string?>("FILE")
        {
            Description = "The CSV file. Left out: standard output, or none with --choose-for.",
            Arity = ArgumentArity.ZeroOrOne,
        };
        var jobs = Jobs();
        var generator = new Option<string?>("--generator-name")
        {
            Description = "Only jobs with this generator, by the name that the list shows. Left out: all finished jobs must be of one kind.",
            HelpName = "NAME",
        };
        var name = new Option<string>("--name")
        {
            Description = "What the curve is called.",
            HelpName = "TEXT",
            DefaultValueFactory = _ => "the shop's own curve",
        };
        var least = new Option<double>("--least-tolerance-db")
        {
            Description = "The tolerance where the jobs scatter less; more where they scatter more.",
            HelpName = "DB",
            DefaultValueFactory = _ => TargetCurve.UsualToleranceDecibels,
        };
        FlagRange.Require(least, TargetPoint.LeastToleranceDecibels, TargetPoint.MostToleranceDecibels);
        var choose = new Option<string?>("--choose-for")
        {
            Description = "Chooses the curve for this job; autosweep curve undo takes it back.",
            HelpName = "DIR",
        };
        return CurveCommand.Build("target", "Draws a target curve from the finished jobs' levels as left.", async (parsed, cancellationToken) =>
        {
            var curve = FinishedJobs.Draw(JobShelf.Read(parsed.GetValue(jobs)!), parsed.GetValue(generator), parsed.GetValue(name)!, parsed.GetValue(least));
            if (parsed.GetValue(file) is { } path)
                await CurveFile.WriteAsync(path, CurveCsv.Text(curve), cancellationToken);
            if (parsed.GetValue(choose) is { } folder)
                Choose(folder, curve);
            else if (parsed.GetValue(file) is null)
                await Console.Out.WriteAsync(CurveCsv.Text(curve).AsMemory(), cancellationToken);
        }, file, jobs, generator, name, least, choose);
    }

    private static void Choose(string folder, TargetCurve curve)
    {
        using var record = TargetChoice.Open(folder);
        var known = record.Profile.Outputs.Select(output => output.Number).ToHashSet();
        CurveCommand.Tell(TargetChoice.Choose(record, _ => curve with { Points = [.. curve.Points.Where(point => known.Contains(point.Output))] }), folder);
    }
}
