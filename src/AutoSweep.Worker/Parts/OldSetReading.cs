using System.Globalization;
using AutoSweep.Core.Quantities;
using AutoSweep.Core.Stock;
using AutoSweep.Worker.Stock;

namespace AutoSweep.Worker.Parts;

/// <summary>Reads the capacitors that came off, output by output: ask for it, read, write down, beep, the next.</summary>
/// <param name="parts">Where measured parts come from.</param>
/// <param name="ledger">The stock, whose ledger keeps the old set.</param>
/// <param name="job">The job's name in the ledger.</param>
/// <param name="outputs">The outputs that had a capacitor, in the order of work. One that is written down already is not asked for.</param>
/// <param name="label">What is known of the whole set.</param>
/// <param name="words">What the person says of one that is not put on the clips.</param>
/// <param name="told">Where the person reads what happened.</param>
/// <param name="clock">The wall clock.</param>
public sealed class OldSetReading(
    IPartSource parts, StockLedger ledger, string job, IReadOnlyList<int> outputs, OldSetLabel label, OldSetWords words, TextWriter told, TimeProvider clock)
{
    // For a last word on the meter's display; where the meter is gone there is nothing to be shown.
    private static readonly TimeSpan Farewell = TimeSpan.FromSeconds(2);

    private readonly HashSet<int> _leftOut = [];

    /// <summary>Works until every output's is written down or left out, or the person ends it.</summary>
    /// <param name="cancellationToken">Ends it; what was read is written down.</param>
    /// <returns>How many were written down.</returns>
    public async Task<int> RunAsync(CancellationToken cancellationToken)
    {
        try
        {
            return await ReadAsync(cancellationToken);
        }
        finally
        {
            // However it ends: a display that goes on asking would be obeyed.
            using var limit = new CancellationTokenSource(Farewell, clock);
            await parts.FinishAsync(limit.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task<int> ReadAsync(CancellationToken cancellationToken)
    {
        var count = 0;
        // Asked for anew each time: what was taken back meanwhile is missing again.
        while (Next() is { } output)
        {
            words.AskFor(output);
            await told.WriteLineAsync($"  output {output,3}: its old capacitor, please");
            await parts.AskForAsync(output, [], cancellationToken);
            var (measured, word) = await NextAsync(cancellationToken);
            if (word == OldSetWord.LeftOut)
                _leftOut.Add(output);
            else if (word == OldSetWord.Ended || (measured is null && word is null))
                break;
            else
                count += await TakeAsync(output, measured, cancellationToken);
        }

        return count;
    }

    private int? Next()
    {
        var known = ledger.Read().OldCapacitors.Values.Where(old => old.Job == job).Select(old => old.Output).ToHashSet();
        return outputs.Where(output => !known.Contains(output) && !_leftOut.Contains(output)).Select(output => (int?)output).FirstOrDefault();
    }

    // None of both where the person ends the work.
    private async Task<(MeasuredPart? Measured, OldSetWord? Word)> NextAsync(CancellationToken cancellationToken)
    {
        using var first = CancellationTokenSource.CreateLinkedTokenSource(cancellationToken);
        var (word, measured) = (words.NextAsync(first.Token), parts.NextAsync(first.Token));
        await Task.WhenAny(measured, word);
        await first.CancelAsync();
        await ((Task)Task.WhenAll(measured, word)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        cancellationToken.ThrowIfCancellationRequested();
        return word.IsCompletedSuccessfully && !measured.IsCompletedSuccessfully ? (null, word.Result) : (await measured, null);
    }

    private async Task<int> TakeAsync(int output, MeasuredPart? measured, CancellationToken cancellationToken)
    {
        var old = new OldCapacitorRemoved(job, output, measured is null ? null : new PartMeasurement(
            measured.Capacitance.Picofarads, measured.StandardUncertaintyPicofarads, clock.GetUtcNow(), measured.Dissipation, parts.Meter),
            label.NominalPicofarads, null, label.MadeIn);
        (await ledger.AppendAsync(old, cancellationToken)).OrFault();
        await told.WriteLineAsync($"  output {output,3}: {InWords(old)}");
        await parts.SignalAsync(isFine: true, cancellationToken);
        return 1;
    }

    private static string InWords(OldCapacitorRemoved old) => old.Measured is not { } measured ? "no capacitor any more" : string.Create(
        CultureInfo.InvariantCulture,
        $"{new Capacitance(measured.Picofarads)}{(measured.Dissipation is { } loss ? $", D {loss:0.####}" : "")}{(CapacitorDrift.Percent(old) is { } drift ? $", {drift:+0.0;-0.0} %" : "")}");
}
