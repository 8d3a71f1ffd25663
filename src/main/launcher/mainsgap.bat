@echo off
rem Starts Mainsgap from its portable folder. JAVA_HOME chooses the Java, else the one on the path.
setlocal
set "HOME_FOLDER=%~dp0.."
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
rem The serial library would unpack its native part into a folder that everybody may write to.
"%JAVA%" --module-path "%HOME_FOLDER%\lib\javafx\win" --add-modules javafx.controls "-DjSerialComm.library.path=%HOME_FOLDER%\lib\serial" %MAINSGAP_JAVA_OPTIONS% -cp "%HOME_FOLDER%\lib\*" mainsgap.Mainsgap %*
exit /b %ERRORLEVEL%
