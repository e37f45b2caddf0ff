namespace AutoSweep.Instruments.Links;

/// <summary>A raw TCP socket: <c>TCPIP[board]::host::port::SOCKET</c>.</summary>
/// <param name="Text">The name as written.</param>
/// <param name="Host">Host name or address.</param>
/// <param name="Port">TCP port, 1 to 65535; 5025 is the usual one for SCPI.</param>
public sealed record SocketResource(string Text, string Host, int Port) : ResourceName(Text);
