namespace AutoSweep.Instruments.Links;

/// <summary>A message on its way to the thread that sends it.</summary>
/// <param name="Number">Its place in the order in which messages are sent; ascending.</param>
/// <param name="Bytes">The message with its terminator.</param>
/// <param name="AnswerWithin">How long its answer may take; null when it has none.</param>
/// <param name="Cancelled">Ends the sending, if it has not begun.</param>
internal sealed record PendingMessage(long Number, byte[] Bytes, TimeSpan? AnswerWithin, CancellationToken Cancelled)
{
    private readonly TaskCompletionSource _sent = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Done when the message is out, or will never be.</summary>
    public Task Sent => _sent.Task;

    public void Succeeded() => _sent.TrySetResult();

    public void NotSent() => _sent.TrySetCanceled(Cancelled);

    public void Failed(IOException cause)
    {
        _sent.TrySetException(cause);
        _ = _sent.Task.Exception; // seen, though nobody may be waiting any more
    }
}
