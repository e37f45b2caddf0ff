namespace AutoSweep.Sim.Scpi;

/// <summary>Carries out messages unit by unit, with the compound header rule and the error queue.</summary>
internal sealed class ScpiInterpreter(CommandTable commands, ScpiStatus status)
{
    /// <summary>The answers of the message so far, for the status byte's "message available".</summary>
    public bool AnswerWaiting { get; private set; }

    /// <summary>Whether the message in hand has met an error.</summary>
    public bool Failed { get; private set; }

    /// <returns>The answers joined, or null.</returns>
    public async ValueTask<string?> ExecuteAsync(string message, CancellationToken interrupted)
    {
        var answers = new List<string>();
        (AnswerWaiting, Failed) = (false, false);
        try
        {
            await ExecuteUnitsAsync(message, answers, interrupted);
        }
        catch (OperationCanceledException) when (interrupted.IsCancellationRequested)
        {
            status.Report(ScpiError.Interrupted);
            return null;
        }

        return answers.Count == 0 ? null : string.Join(';', answers);
    }

    private async ValueTask ExecuteUnitsAsync(string message, List<string> answers, CancellationToken interrupted)
    {
        var path = "";
        var afterIdentity = false;
        using var units = MessageSyntax.Units(message).GetEnumerator();
        while (true)
        {
            try
            {
                if (!units.MoveNext()) return;
                var unit = MessageSyntax.Unit(units.Current);
                if (afterIdentity && unit.IsQuery) throw new ScpiErrorException(ScpiError.AfterIndefinite);
                var header = unit.FromRoot || path.Length == 0 ? unit.Header : $"{path}:{unit.Header}";
                if (!unit.IsCommon) path = header.Contains(':', StringComparison.Ordinal) ? header[..header.LastIndexOf(':')] : "";
                if (await Find(header)(new Arguments(unit.Parameters), interrupted) is { } answer) answers.Add(answer);
                AnswerWaiting = answers.Count > 0;
                afterIdentity |= header == "*IDN?";
            }
            catch (ScpiErrorException fault)
            {
                status.Report(fault.Error);
                Failed = true;
                if (fault.Error.IsCommandError || fault.Error == ScpiError.AfterIndefinite) return;
            }
        }
    }

    private CommandTable.Handler Find(string header)
    {
        if (commands.Find(header) is { } handler) return handler;
        var plain = string.Join(':', header.TrimEnd('?').Split(':').Select(node => node.TrimEnd("0123456789".ToCharArray())));
        var suffixed = commands.Find(header.EndsWith('?') ? plain + "?" : plain);
        throw new ScpiErrorException(suffixed is null ? ScpiError.UndefinedHeader : ScpiError.HeaderSuffix);
    }
}
