using System.Collections.Concurrent;

namespace PlantWatch.Storage.Sqlite;

/// <summary>Read sessions, kept with their prepared statements for the next reader.</summary>
internal sealed class SessionPool(string path) : IDisposable
{
    private readonly ConcurrentBag<Session> _idle = [];
    private volatile bool _closed;

    /// <summary>Runs work on a session of its own.</summary>
    public T Read<T>(Func<Session, T> work)
    {
        ObjectDisposedException.ThrowIf(_closed, this);
        if (!_idle.TryTake(out var session)) session = Session.OpenReader(path);
        try
        {
            var result = work(session);
            Return(session);
            return result;
        }
        catch
        {
            // It may stand in the middle of an answer: the next reader gets a fresh one.
            session.Dispose();
            throw;
        }
    }

    public void Dispose()
    {
        _closed = true;
        while (_idle.TryTake(out var session)) session.Dispose();
    }

    private void Return(Session session)
    {
        _idle.Add(session);
        // Closed meanwhile: nobody else would dispose of it.
        if (_closed) Dispose();
    }
}
