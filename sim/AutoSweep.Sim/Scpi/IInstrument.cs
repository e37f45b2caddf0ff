namespace AutoSweep.Sim.Scpi;

/// <summary>An instrument that takes messages and answers, whatever wire they come over.</summary>
internal interface IInstrument
{
    /// <summary>Carries out one message.</summary>
    /// <param name="message">The message without its terminator.</param>
    /// <param name="interrupted">Cancelled when another message comes before the answer is out.</param>
    /// <returns>The answer without its terminator, or null where there is none.</returns>
    ValueTask<string?> ExecuteAsync(string message, CancellationToken interrupted);

    /// <summary>Something on the wire went wrong before there was a message.</summary>
    void Report(ScpiError error);
}
