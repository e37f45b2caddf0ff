namespace AutoSweep.Worker.ByHand;

/// <summary>The dialogue at the terminal, a question a line, so that a script or a screen reader follows it as well.</summary>
public sealed class ConsoleDialogue : IBenchDialogue
{
    /// <inheritdoc/>
    public async Task<string?> AskAsync(string question, CancellationToken cancellationToken)
    {
        Console.Out.WriteLine(question);
        // The console's own reader blocks whatever the token says; the wait for it does not.
        var line = await Task.Run(Console.In.ReadLine, CancellationToken.None).WaitAsync(cancellationToken);
        return line?.Trim();
    }

    /// <inheritdoc/>
    public void Tell(string line) => Console.Out.WriteLine(line);
}
