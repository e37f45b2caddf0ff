namespace AutoSweep.Worker.Bench;

/// <summary>The few keys of the person at the bench.</summary>
public interface IOperatorKeys
{
    /// <summary>Waits for a key. An unknown key is answered with what is expected and waited past.</summary>
    /// <returns><see cref="OperatorKey.Stop"/> when the input has ended.</returns>
    Task<OperatorKey> ReadAsync(CancellationToken cancellationToken);
}
