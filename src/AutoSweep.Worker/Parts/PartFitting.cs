using System.Globalization;
using AutoSweep.Core.Journal;
using AutoSweep.Core.Matching;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Job;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Parts;

/// <summary>Walks the picking list: asks for the parts of an output, measures them before they are soldered in, accepts them or offers others.</summary>
/// <param name="parts">Where measured parts come from.</param>
/// <param name="ledger">The stock.</param>
/// <param name="record">The job.</param>
/// <param name="jobName">The job's name in the ledger.</param>
/// <param name="nextBest">Finds other parts.</param>
/// <param name="options">What is accepted.</param>
/// <param name="output">Where the person reads what happens.</param>
public sealed class PartFitting(
    IPartSource parts, StockLedger ledger, JobRecord record, string jobName, NextBest nextBest, FitOptions options, TextWriter output)
{
    /// <summary>Works until every reserved output is fitted or was left out, or the person ends it.</summary>
    /// <param name="targets">What the outputs want.</param>
    /// <param name="cancellationToken">Ends it.</param>
    /// <returns>The outputs that are not fitted.</returns>
    public async Task<IReadOnlyList<int>> RunAsync(IReadOnlyList<MatchTarget> targets, CancellationToken cancellationToken)
    {
        foreach (var found in FittingRepair.Complete(record, ledger.Read(), jobName, targets))
            await SayAsync($"  output {found,3}: the stock has its parts fitted, and the job did not say so: written down now, with the values of the stock");
        foreach (var line in FitLine.Of(targets, ledger.Read(), jobName, options.ByBins))
        {
            if (!await FitAsync(line, cancellationToken))
                break;
        }

        await parts.FinishAsync(cancellationToken);
        var fitted = ledger.Read().HeldBy(jobName, PartStatus.Fitted);
        return [.. targets.Select(target => target.Output).Where(number => !fitted.ContainsKey(number))];
    }

    // False when the person has ended the work.
    private async Task<bool> FitAsync(FitLine line, CancellationToken cancellationToken)
    {
        HashSet<string> tried = [];
        for (var offer = 0; ; offer++)
        {
            await SayAsync($"  output {line.Target.Output,3}: {line.InWords(ledger.Read())}, wants {line.Target.Wanted}");
            if (await MeasureAsync(line, cancellationToken) is not { } check)
                return false;
            if (check.Verdict == FitVerdict.Good)
            {
                await AcceptAsync(line, check, cancellationToken);
                return true;
            }

            tried.UnionWith(line.Ids);
            if (offer == options.Offers || nextBest.For(line.Target, ledger.Read(), tried, cancellationToken) is not { } other)
            {
                await SayAsync($"  >> output {line.Target.Output}: no other free parts come within the limit. It stays open; match again, or take in more parts.");
                return true;
            }

            line = await ExchangeAsync(line, other, cancellationToken);
        }
    }

    // A wrong part on the clips is asked for once more before others are taken: a hand in the wrong bag is likelier than a broken part.
    private async Task<FitCheck?> MeasureAsync(FitLine line, CancellationToken cancellationToken)
    {
        for (var again = 0; ; again++)
        {
            await parts.AskForAsync(line.Target.Output, line.Ids, cancellationToken);
            if (await parts.NextAsync(cancellationToken) is not { } measured)
                return null;
            var check = FitCheck.Of(line, measured, options);
            if (check.Verdict == FitVerdict.Good)
                return check;
            await SayAsync(Trouble(line, check));
            await parts.SignalAsync(isFine: false, cancellationToken);
            if (check.Verdict != FitVerdict.WrongPart || again == 1)
                return check;
        }
    }

    private static string Trouble(FitLine line, FitCheck check) => string.Create(CultureInfo.InvariantCulture,
        $"  >> output {line.Target.Output}: {check.Measured.Capacitance} on the clips, {line.Combination.Sum} in the ledger: {check.LossDecibels:0.000} dB would be lost. ")
        + (check.Verdict == FitVerdict.WrongPart ? "Is it the right part, and the clip firm?" : "Other parts are chosen.");

    private async Task AcceptAsync(FitLine line, FitCheck check, CancellationToken cancellationToken)
    {
        var fitted = await ledger.AppendAsync(new PartsFitted(jobName, line.Target.Output, line.Ids), cancellationToken);
        fitted.OrFault();
        record.Append(new OutputFitted
        {
            Output = line.Target.Output,
            Parts = line.Ids,
            MeasuredPicofarads = check.Measured.Capacitance.Picofarads,
            StandardUncertaintyPicofarads = check.Measured.StandardUncertaintyPicofarads,
            Dissipation = check.Measured.Dissipation,
            WantedPicofarads = line.Target.Wanted.Picofarads,
            LossDecibels = check.LossDecibels,
            Meter = parts.Meter,
            LedgerSequence = fitted.Entry!.Sequence,
        });
        await SayAsync(string.Create(CultureInfo.InvariantCulture, $"              measured {check.Measured.Capacitance}, {check.LossDecibels:0.0000} dB: solder it in"));
        await parts.SignalAsync(isFine: true, cancellationToken);
    }

    private async Task<FitLine> ExchangeAsync(FitLine line, Combination other, CancellationToken cancellationToken)
    {
        var answer = await ledger.AppendAsync(
            new PartsReserved(jobName, [.. other.Parts.Select(part => new PartReservation(part.Id, line.Target.Output))], line.Ids), cancellationToken);
        answer.OrFault();
        return line with { Combination = other };
    }

    private Task SayAsync(string text) => output.WriteLineAsync(text);
}
