using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using AutoSweep.Core;
using AutoSweep.Core.Matching;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Reports;
using AutoSweep.Worker.Stock;
using AutoSweep.Worker.Terminal;

namespace AutoSweep.Worker.Commands;

/// <summary><c>autosweep match</c>.</summary>
public static class MatchCommand
{
    /// <summary>The command.</summary>
    public static Command Build()
    {
        var job = new Option<string>("--job") { Description = "The job's folder, swept.", HelpName = "DIR", Required = true };
        var limit = new Option<double>("--limit-db")
        {
            Description = "The expected loss that an output may have, in dB.",
            HelpName = "DB",
            DefaultValueFactory = _ => 0.05,
        };
        var most = new Option<int>("--most-parts")
        {
            Description = "The most parts in parallel at one output, 1 to 3.",
            HelpName = "N",
            DefaultValueFactory = _ => 2,
        };
        var pins = new Option<string[]>("--pin")
        {
            Description = "Parts that must go to an output, such as 49=P00012+P00031. May be given again.",
            HelpName = "OUTPUT=ID",
        };
        var exclude = new Option<string[]>("--exclude")
        {
            Description = "A part that must not be used. May be given again.",
            HelpName = "ID",
        };
        var volts = new Option<double>("--volts")
        {
            Description = "The rated voltage that parts must have. Left out: any.",
            HelpName = "VOLTS",
        };
        var afresh = new Option<bool>("--afresh")
        {
            Description = "Forget an earlier match. Left out: as few of its parts move as can be.",
        };
        var seed = new Option<int>("--seed") { Description = "Seed of the search.", HelpName = "N", DefaultValueFactory = _ => 1 };
        var time = new Option<double>("--time-limit")
        {
            Description = "The most seconds for the search.",
            HelpName = "SECONDS",
            DefaultValueFactory = _ => 10,
        };
        limit.Validators.Add(result => Check(result, 1e-6, 10));
        most.Validators.Add(result => Check(result, 1, 3));
        time.Validators.Add(result => Check(result, 0.1, 3600));
        pins.Validators.Add(CheckPins);
        var stock = new StockFlags();
        var command = new Command(
            "match",
            "Matches measured parts to all swept outputs of a generator, reserves them, and writes DIR/picking-list.csv and .json.")
        {
            job, limit, most, pins, exclude, volts, afresh, seed, time,
        };
        stock.AddTo(command);
        command.SetAction((parsed, cancellationToken) => StageCommand.RunAsync(() => RunAsync(
            parsed.GetValue(job)!,
            stock.Open(parsed),
            new()
            {
                Pinned = Pinned(parsed.GetValue(pins) ?? []),
                Excluded = (parsed.GetValue(exclude) ?? []).ToHashSet(),
                RequiredVolts = parsed.GetValue(volts),
                Afresh = parsed.GetValue(afresh),
            },
            new()
            {
                LossLimitDecibels = parsed.GetValue(limit),
                MostParts = parsed.GetValue(most),
                Seed = parsed.GetValue(seed),
                TimeLimit = TimeSpan.FromSeconds(parsed.GetValue(time)),
            },
            cancellationToken)));
        return command;
    }

    private static async Task<JobOutcome> RunAsync(string folder, StockLedger ledger, MatchWishes wishes, MatchOptions options,
        CancellationToken cancellationToken)
    {
        if (!Directory.Exists(folder))
            throw new BenchFaultException(BenchFault.BadFile, $"no folder {Path.GetFullPath(folder)}", "the folder of a swept job",
                "name another with --job");
        using var record = JobRecord.Resume(JobFolder.Open(folder), setAsideDamage: false, TimeProvider.System);
        var result = await new JobMatch(record, ledger, TimeProvider.System).MatchAsync(wishes, options, cancellationToken);
        var list = PickingList.From(result);
        ResultFiles.Write(record.Folder, list);
        PickingListText.Write(PlainWidth.Console(), list, options, record.Folder);
        var outcome = new JobOutcome();
        outcome.Completed();
        return outcome;
    }

    private static Dictionary<int, IReadOnlyList<string>> Pinned(IEnumerable<string> pins) => pins
        .Select(pin => Pin(pin)!.Value)
        .GroupBy(pin => pin.Output)
        .ToDictionary(group => group.Key, group => (IReadOnlyList<string>)[.. group.SelectMany(pin => pin.Parts)]);

    private static (int Output, string[] Parts)? Pin(string text)
    {
        var halves = text.Split('=');
        if (halves.Length != 2 || !int.TryParse(halves[0], NumberStyles.None, CultureInfo.InvariantCulture, out var output))
            return null;
        var parts = halves[1].Split('+', StringSplitOptions.TrimEntries);
        return parts.Any(part => part.Length == 0) ? null : (output, parts);
    }

    private static void CheckPins(OptionResult result)
    {
        foreach (var token in result.Tokens.Where(token => Pin(token.Value) is null))
            result.AddError($"--pin {token.Value}: expected an output and its parts, such as 49=P00012+P00031.");
    }

    private static void Check(OptionResult result, double least, double most)
    {
        foreach (var token in result.Tokens)
        {
            if (!double.TryParse(token.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
                || !(value >= least && value <= most))
                result.AddError(FormattableString.Invariant(
                    $"{result.IdentifierToken?.Value} is {token.Value}; expected a number from {least} to {most}."));
        }
    }
}
