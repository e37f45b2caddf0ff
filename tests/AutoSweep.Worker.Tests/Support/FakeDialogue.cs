using AutoSweep.Worker.ByHand;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A person with the answers written down beforehand; after the last one the input has ended.</summary>
internal sealed class FakeDialogue(params string[] answers) : IBenchDialogue
{
    private readonly Queue<string> _answers = new(answers);

    /// <summary>Answers what is not written down.</summary>
    public Func<string, string?>? Otherwise { get; init; }

    public List<string> Asked { get; } = [];

    public List<string> Told { get; } = [];

    public Task<string?> AskAsync(string question, CancellationToken cancellationToken)
    {
        Asked.Add(question);
        return Task.FromResult(_answers.TryDequeue(out var answer) ? answer : Otherwise?.Invoke(question));
    }

    public void Tell(string line) => Told.Add(line);
}
