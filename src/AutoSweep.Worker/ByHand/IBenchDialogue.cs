namespace AutoSweep.Worker.ByHand;

/// <summary>Asks the person at the bench in whole lines, and hears a line back.</summary>
public interface IBenchDialogue
{
    /// <summary>Asks, and waits for the answer.</summary>
    /// <param name="question">The lines shown.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>The line as typed, blanks at its ends taken off; null at the end of the input.</returns>
    Task<string?> AskAsync(string question, CancellationToken cancellationToken);

    /// <summary>Asks something of which a screen can show more than lines.</summary>
    /// <param name="question">The question.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>As for a question in lines, which is what it is where nothing more can be shown.</returns>
    Task<string?> AskAsync(BenchQuestion question, CancellationToken cancellationToken) => AskAsync(question.Text, cancellationToken);

    /// <summary>Tells something that needs no answer.</summary>
    void Tell(string line);
}
