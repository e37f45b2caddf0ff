namespace AutoSweep.Sim.Scpi;

/// <summary>The commands that every instrument has (IEEE 488.2, 10) and SCPI's error queue and version.</summary>
internal static class CommonCommands
{
    private static readonly NumberRange Register = new(0, 255, 0);

    /// <param name="table">The table to add to.</param>
    /// <param name="status">The instrument's registers.</param>
    /// <param name="identity">The answer to *IDN?.</param>
    /// <param name="reset">What *RST does.</param>
    /// <param name="settled">Waits until everything that was begun has ended.</param>
    /// <param name="answerWaiting">Whether the message in hand has an answer already.</param>
    public static CommandTable AddCommon(
        this CommandTable table, ScpiStatus status, string identity, Action reset,
        Func<CancellationToken, ValueTask> settled, Func<bool> answerWaiting)
    {
        return table
            .Query("*IDN?", arguments => arguments.None(() => identity))
            .Command("*RST", arguments => arguments.None(reset))
            .Command("*CLS", arguments => arguments.None(status.Clear))
            .Query("*TST?", arguments => arguments.None(() => "0"))
            .Query("*ESR?", arguments => arguments.None(() => Arguments.Nr1(status.TakeEvents())))
            .Query("*ESE?", arguments => arguments.None(() => Arguments.Nr1(status.EventEnable)))
            .Query("*SRE?", arguments => arguments.None(() => Arguments.Nr1(status.ServiceEnable)))
            .Query("*STB?", arguments => arguments.None(() => Arguments.Nr1(status.StatusByte(answerWaiting()))))
            .Command("*ESE", arguments => status.EventEnable = arguments.Expect(1, 1).Whole(0, Register))
            .Command("*SRE", arguments => status.ServiceEnable = arguments.Expect(1, 1).Whole(0, Register))
            .Query("SYSTem:VERSion?", arguments => arguments.None(() => "1999.0"))
            .Query("SYSTem:ERRor[:NEXT]?", arguments => arguments.None(() => status.NextError().ToString()))
            .AddWaiting(status, settled);
    }

    private static CommandTable AddWaiting(this CommandTable table, ScpiStatus status, Func<CancellationToken, ValueTask> settled)
    {
        async ValueTask<string?> WaitAsync(Arguments arguments, CancellationToken interrupted, string? answer)
        {
            arguments.None();
            await settled(interrupted);
            return answer;
        }

        // *OPC does not hold up the messages that follow (IEEE 488.2, 10.18).
        async Task CompleteLaterAsync()
        {
            await settled(CancellationToken.None);
            status.Complete();
        }

        return table
            .Add("*OPC?", (arguments, interrupted) => WaitAsync(arguments, interrupted, "1"))
            .Add("*WAI", (arguments, interrupted) => WaitAsync(arguments, interrupted, null))
            .Command("*OPC", arguments => arguments.None(() => _ = CompleteLaterAsync()));
    }
}
