using System.Runtime.InteropServices;

namespace AutoSweep.Instruments.Links.Visa;

/// <summary>The functions of a VISA library, bound by name (VPP-4.3.2, ANSI C): numbers of 32 bits, attribute values as wide as a
/// pointer, texts of 8 bits ended by a zero.</summary>
internal sealed unsafe class VisaFunctions
{
    /// <summary>How long a text from the library may be (VI_FIND_BUFLEN; viStatusDesc, VPP-4.3, 3.6.4).</summary>
    public const int TextLength = 256;

    private readonly delegate* unmanaged<uint*, int> _openDefaultManager;
    private readonly delegate* unmanaged<uint, byte*, uint, uint, uint*, int> _open;
    private readonly delegate* unmanaged<uint, int> _close;
    private readonly delegate* unmanaged<uint, uint, nuint, int> _setAttribute;
    private readonly delegate* unmanaged<uint, byte*, uint, uint*, int> _write;
    private readonly delegate* unmanaged<uint, byte*, uint, uint*, int> _read;
    private readonly delegate* unmanaged<uint, int> _clear;
    private readonly delegate* unmanaged<uint, ushort*, int> _readStatusByte;
    private readonly delegate* unmanaged<uint, ushort, uint, int> _terminate;
    private readonly delegate* unmanaged<uint, int, byte*, int> _describeStatus;
    private readonly delegate* unmanaged<uint, byte*, uint*, uint*, byte*, int> _find;
    private readonly delegate* unmanaged<uint, byte*, int> _findNext;
    private readonly delegate* unmanaged<uint, byte*, ushort*, ushort*, int> _parse;

    /// <summary>Binds every function at once.</summary>
    /// <exception cref="EntryPointNotFoundException">It is no VISA library.</exception>
    public VisaFunctions(nint library)
    {
        _openDefaultManager = (delegate* unmanaged<uint*, int>)NativeLibrary.GetExport(library, "viOpenDefaultRM");
        _open = (delegate* unmanaged<uint, byte*, uint, uint, uint*, int>)NativeLibrary.GetExport(library, "viOpen");
        _close = (delegate* unmanaged<uint, int>)NativeLibrary.GetExport(library, "viClose");
        _setAttribute = (delegate* unmanaged<uint, uint, nuint, int>)NativeLibrary.GetExport(library, "viSetAttribute");
        _write = (delegate* unmanaged<uint, byte*, uint, uint*, int>)NativeLibrary.GetExport(library, "viWrite");
        _read = (delegate* unmanaged<uint, byte*, uint, uint*, int>)NativeLibrary.GetExport(library, "viRead");
        _clear = (delegate* unmanaged<uint, int>)NativeLibrary.GetExport(library, "viClear");
        _readStatusByte = (delegate* unmanaged<uint, ushort*, int>)NativeLibrary.GetExport(library, "viReadSTB");
        _terminate = (delegate* unmanaged<uint, ushort, uint, int>)NativeLibrary.GetExport(library, "viTerminate");
        _describeStatus = (delegate* unmanaged<uint, int, byte*, int>)NativeLibrary.GetExport(library, "viStatusDesc");
        _find = (delegate* unmanaged<uint, byte*, uint*, uint*, byte*, int>)NativeLibrary.GetExport(library, "viFindRsrc");
        _findNext = (delegate* unmanaged<uint, byte*, int>)NativeLibrary.GetExport(library, "viFindNext");
        _parse = (delegate* unmanaged<uint, byte*, ushort*, ushort*, int>)NativeLibrary.GetExport(library, "viParseRsrc");
    }

    public int OpenDefaultManager(out uint manager)
    {
        fixed (uint* session = &manager)
            return _openDefaultManager(session);
    }

    public int Open(uint manager, string name, TimeSpan timeout, out uint session)
    {
        fixed (byte* text = Zeroed(name))
        fixed (uint* opened = &session)
            return _open(manager, text, 0, (uint)timeout.TotalMilliseconds, opened);
    }

    public int Close(uint session) => _close(session);

    public int SetAttribute(uint session, VisaAttribute attribute, nuint value) => _setAttribute(session, (uint)attribute, value);

    public int Write(uint session, ReadOnlySpan<byte> bytes, out uint count)
    {
        fixed (byte* first = bytes)
        fixed (uint* done = &count)
            return _write(session, first, (uint)bytes.Length, done);
    }

    public int Read(uint session, Span<byte> buffer, out uint count)
    {
        fixed (byte* first = buffer)
        fixed (uint* done = &count)
            return _read(session, first, (uint)buffer.Length, done);
    }

    public int Clear(uint session) => _clear(session);

    public int ReadStatusByte(uint session, out ushort status)
    {
        fixed (ushort* read = &status)
            return _readStatusByte(session, read);
    }

    public int Terminate(uint session) => _terminate(session, 0, 0);

    public string DescribeStatus(uint session, int status)
    {
        var text = stackalloc byte[TextLength];
        text[0] = 0;
        return _describeStatus(session, status, text) < 0 ? "" : Text(text);
    }

    public int Find(uint manager, string expression, out uint list, out uint count, out string first)
    {
        var text = stackalloc byte[TextLength];
        text[0] = 0;
        fixed (byte* wanted = Zeroed(expression))
        fixed (uint* found = &list, counted = &count)
        {
            var status = _find(manager, wanted, found, counted, text);
            first = Text(text);
            return status;
        }
    }

    public int FindNext(uint list, out string next)
    {
        var text = stackalloc byte[TextLength];
        text[0] = 0;
        var status = _findNext(list, text);
        next = Text(text);
        return status;
    }

    public int Parse(uint manager, string name, out ushort interfaceType)
    {
        ushort board;
        fixed (byte* text = Zeroed(name))
        fixed (ushort* type = &interfaceType)
            return _parse(manager, text, type, &board);
    }

    private static byte[] Zeroed(string text) => System.Text.Encoding.Latin1.GetBytes(text + '\0');

    private static string Text(byte* text)
    {
        var bytes = new ReadOnlySpan<byte>(text, TextLength);
        var end = bytes.IndexOf((byte)0);
        return System.Text.Encoding.Latin1.GetString(end < 0 ? bytes : bytes[..end]);
    }
}
