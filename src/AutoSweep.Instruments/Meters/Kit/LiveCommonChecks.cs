using AutoSweep.Core;
using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Meters.Kit;

/// <summary>What every meter is checked for, whatever it measures.</summary>
internal static class LiveCommonChecks
{
    // Well formed, and of no instrument: SCPI-1999, 6.2.1 allows twelve letters a mnemonic.
    private const string UnknownCommand = "NOSUCH:COMMAND";

    // Shorter than one cycle of the mains, over which every bench meter averages at least.
    private static readonly TimeSpan TooShort = TimeSpan.FromMilliseconds(10);

    public static LiveCheckRow Identity(InstrumentIdentity identity, MeterDriver driver) =>
        new("identity", identity.ToString(), string.Join(" or ", driver.Identity), LiveVerdict.Ok);

    public static LiveCheckRow Refused(IReadOnlyCollection<string> refused) => new(
        "commands", refused.Count == 0 ? "every command is taken" : $"refused: {string.Join(", ", refused)}", "required ones are taken", LiveVerdict.Ok,
        refused.Count == 0 ? "" : "the meter is used without them");

    /// <summary>An unknown command must be told of, once.</summary>
    public static async Task<LiveCheckRow> ErrorQueueAsync(ScpiSession session, MeterDriver driver, CancellationToken cancellationToken)
    {
        if (driver.ErrorQuery is not { } query)
            return LiveCheckRow.NotChecked("error queue", "the driver names none: nothing counts as refused");
        var told = await session.SendAndCheckAsync(UnknownCommand, cancellationToken);
        var left = await session.DrainErrorsAsync(cancellationToken);
        return LiveCheckRow.Judged("error queue",
            told.Count == 0 ? $"nothing after {UnknownCommand}" : $"{string.Join("; ", told)}, then {(left.Count == 0 ? "empty" : "more")}",
            $"an error after {UnknownCommand}, then none", told.Count > 0 && left.Count == 0,
            $"the meter does not tell by {query} what it refuses: look the query up, or set errorQuery to null");
    }

    // A busy computer can look at its clock too late, with the answer already there.
    private const int Attempts = 5;

    /// <summary>Asks with far too little time, until an answer is missed.</summary>
    /// <returns>Whether the meter answered all the same, every time.</returns>
    public static async Task<bool> AnswersTooSoonAsync(ScpiSession session, string query, CancellationToken cancellationToken)
    {
        for (var attempt = 0; attempt < Attempts; attempt++)
        {
            if (!await AnswersAsync(session, query, cancellationToken))
                return false;
        }

        return true;
    }

    private static async Task<bool> AnswersAsync(ScpiSession session, string query, CancellationToken cancellationToken)
    {
        try
        {
            await session.QueryAsync(query, cancellationToken, TooShort);
            return true;
        }
        catch (BenchFaultException fault) when (fault.Kind == BenchFault.NoAnswer)
        {
            return false;
        }
    }
}
