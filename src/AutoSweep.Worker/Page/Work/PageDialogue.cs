using System.Collections.Immutable;
using AutoSweep.Worker.Bench;
using AutoSweep.Worker.ByHand;

namespace AutoSweep.Worker.Page.Work;

/// <summary>The person at the bench, heard through the page: one question at a time, answered by whichever screen holds the controls.</summary>
public sealed class PageDialogue : IBenchDialogue, IOperatorKeys
{
    /// <summary>Lines kept for the screens; older ones are in the log.</summary>
    public const int MostLines = 60;

    private readonly Lock _gate = new();
    private TaskCompletionSource<string?>? _waiting;

    /// <summary>Raised after each question, answer and line; a listener must not block.</summary>
    public event Action? Changed;

    /// <summary>The question that waits for its answer; none when nothing is asked.</summary>
    public Question? Asked { get; private set; }

    /// <summary>What was told, oldest first.</summary>
    public ImmutableList<string> Told { get; private set; } = [];

    /// <summary>What was told since the last answer, oldest first: what is wrong with it, or the help that it asked for.</summary>
    public ImmutableList<string> Reply { get; private set; } = [];

    /// <inheritdoc/>
    public Task<string?> AskAsync(BenchQuestion question, CancellationToken cancellationToken) =>
        WaitAsync(new(question.Text, WantsKey: false) { Detail = question }, cancellationToken);

    /// <inheritdoc/>
    public Task<string?> AskAsync(string question, CancellationToken cancellationToken) => WaitAsync(new(question, WantsKey: false), cancellationToken);

    /// <inheritdoc/>
    public async Task<OperatorKey> ReadAsync(CancellationToken cancellationToken) =>
        Enum.Parse<OperatorKey>(await WaitAsync(new("", WantsKey: true), cancellationToken) ?? nameof(OperatorKey.Stop));

    /// <inheritdoc/>
    public void Tell(string line)
    {
        lock (_gate)
            (Told, Reply) = (Appended(Told, line), Appended(Reply, line));
        Changed?.Invoke();
    }

    /// <summary>Answers a question with a line.</summary>
    /// <returns>False when it is not the question that waits: it was answered already, or the work has gone on.</returns>
    public bool Answer(Guid question, string line)
    {
        TaskCompletionSource<string?>? waiting;
        lock (_gate)
        {
            if (Asked?.Id != question)
                return false;
            (waiting, _waiting, Asked, Reply) = (_waiting, null, null, []);
        }

        waiting?.TrySetResult(line.Trim());
        Changed?.Invoke();
        return true;
    }

    /// <summary>Answers a question that waits for a key.</summary>
    /// <returns>False when it is not the question that waits.</returns>
    public bool Press(Guid question, OperatorKey key) => Asked is { WantsKey: true } && Answer(question, key.ToString());

    private static ImmutableList<string> Appended(ImmutableList<string> lines, string line) => (lines.Count >= MostLines ? lines.RemoveAt(0) : lines).Add(line);

    private async Task<string?> WaitAsync(Question question, CancellationToken cancellationToken)
    {
        var waiting = new TaskCompletionSource<string?>(TaskCreationOptions.RunContinuationsAsynchronously);
        lock (_gate)
            (Asked, _waiting) = (question, waiting);
        Changed?.Invoke();
        try
        {
            return await waiting.Task.WaitAsync(cancellationToken);
        }
        finally
        {
            Withdraw(question);
        }
    }

    private void Withdraw(Question question)
    {
        lock (_gate)
        {
            if (Asked?.Id != question.Id)
                return;
            (Asked, _waiting) = (null, null);
        }

        Changed?.Invoke();
    }
}
