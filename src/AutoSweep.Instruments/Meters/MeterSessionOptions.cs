using AutoSweep.Instruments.Scpi;

namespace AutoSweep.Instruments.Meters;

/// <summary>The session that a driver asks for.</summary>
public static class MeterSessionOptions
{
    /// <summary>The options of a driver's session.</summary>
    /// <param name="driver">The driver.</param>
    /// <param name="exchange">Time-outs and retries instead of the driver's, or null.</param>
    public static ScpiSessionOptions Of(MeterDriver driver, ExchangeOptions? exchange = null) => new()
    {
        Terminator = driver.Link.Terminator switch
        {
            DriverTerminator.CrLf => "\r\n",
            DriverTerminator.Cr => "\r",
            _ => "\n",
        },
        ReplyTerminator = driver.Link.ReplyTerminator == DriverTerminator.Cr ? '\r' : '\n',
        ErrorQuery = driver.ErrorQuery,
        Pause = TimeSpan.FromSeconds(driver.Link.PauseSeconds),
        Exchange = exchange ?? new() { QueryTimeout = TimeSpan.FromSeconds(driver.Link.QueryTimeoutSeconds) },
    };
}
