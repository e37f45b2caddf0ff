namespace AutoSweep.Worker.Parts;

/// <summary>Gives measured parts one after the other: from the meter's clips, or typed.</summary>
public interface IPartSource
{
    /// <summary>What the measurements are marked with in the ledger; none for typed values.</summary>
    string? Meter { get; }

    /// <summary>Asks for certain parts, where the person looks: on the meter's own display.</summary>
    /// <param name="output">The output that they are for.</param>
    /// <param name="parts">Their ids; empty for the old capacitor that came off the output.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task AskForAsync(int output, IReadOnlyList<string> parts, CancellationToken cancellationToken);

    /// <summary>Says that no more parts are asked for.</summary>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task FinishAsync(CancellationToken cancellationToken);

    /// <summary>Waits for the next part, or parts in parallel.</summary>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>None when the person has ended the work.</returns>
    Task<MeasuredPart?> NextAsync(CancellationToken cancellationToken);

    /// <summary>Lets the person hear that the part is dealt with, or that it must be looked at.</summary>
    /// <param name="isFine">One beep if it is, two if it must be looked at.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    Task SignalAsync(bool isFine, CancellationToken cancellationToken);
}
